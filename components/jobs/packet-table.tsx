import { TextLink } from "@/components/ui/button";
import { type Column, Table } from "@/components/ui/table";

type PacketRow = {
  readonly id: string;
  readonly kind: string;
  readonly revision: number;
  readonly sha256: string;
  readonly pages: number;
  readonly createdAt: string;
  readonly createdByName: string;
};

/** Every packet made of this job, newest first. */
export function PacketTable({
  jobId,
  packets,
}: {
  readonly jobId: string;
  readonly packets: readonly PacketRow[];
}) {
  const columns: readonly Column<PacketRow>[] = [
    {
      key: "packet",
      head: "Packet",
      rowHead: true,
      cell: (one) => (
        <TextLink href={`/api/jobs/${jobId}/packets/${one.id}`} prefetch={false}>
          {one.kind} packet {one.revision} (PDF, {one.pages} pages)
        </TextLink>
      ),
    },
    { key: "made", head: "Made", cell: (one) => `${one.createdAt.slice(0, 10)} by ${one.createdByName}` },
    {
      key: "hash",
      head: "SHA-256",
      wideOnly: true,
      cell: (one) => <code className="text-xs break-all">{one.sha256}</code>,
    },
  ];
  return (
    <Table
      label="Packets made"
      columns={columns}
      rows={packets}
      rowKey={(one) => one.id}
      empty="No packet has been made yet."
    />
  );
}

import type { Metadata } from "next";
import { MakePacket } from "@/components/jobs/make-packet";
import { PacketTable } from "@/components/jobs/packet-table";
import { Card } from "@/components/ui/card";
import { load, pageScope } from "@/lib/server/page";
import { listPackets } from "@/lib/services/packets";
import { makePacket } from "../../actions";

export const metadata: Metadata = { title: "Packet" };

export default async function PacketPage({
  params,
}: {
  readonly params: Promise<{ readonly jobId: string }>;
}) {
  const scope = await pageScope("packet.make");
  const { jobId } = await params;
  const packets = await load(listPackets(scope, jobId));
  return (
    <div className="grid gap-6">
      <Card title="Homeowner packet">
        <p className="mb-3 max-w-prose text-muted">
          What was promised, installed, set and measured, in plain words, with your brand on it. The file is
          kept as it was made, with the hash of its bytes.
        </p>
        <MakePacket jobId={jobId} make={makePacket} />
      </Card>
      <PacketTable jobId={jobId} packets={packets} />
    </div>
  );
}

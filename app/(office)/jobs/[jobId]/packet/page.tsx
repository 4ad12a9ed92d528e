import type { Metadata } from "next";
import { MakePacket } from "@/components/packets/make-packet";
import { PacketTable } from "@/components/packets/packet-table";
import { Card } from "@/components/ui/card";
import { load, pageScope } from "@/lib/server/page";
import { packetsPage } from "@/lib/services/packets-page";
import { check, makePacket, send, withdraw } from "./actions";

export const metadata: Metadata = { title: "Packets" };

export default async function PacketPage({
  params,
}: {
  readonly params: Promise<{ readonly jobId: string }>;
}) {
  const scope = await pageScope("packet.make");
  const { jobId } = await params;
  const view = await load(packetsPage(scope, jobId));
  return (
    <div className="grid gap-6">
      <Card title="Make a packet">
        <p className="mb-4 max-w-prose text-muted">
          With your brand on it, from the records as they stand. Each file is kept as it was made, with the
          hash of its bytes.
        </p>
        <MakePacket jobId={jobId} paper={view.paper} make={makePacket} />
      </Card>
      <h2 className="text-lg font-semibold">Packets made</h2>
      <PacketTable
        jobId={jobId}
        packets={view.packets}
        customerEmail={view.customerEmail}
        now={view.now}
        send={send}
        check={check}
        withdraw={withdraw}
      />
    </div>
  );
}

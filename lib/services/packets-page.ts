import type { PacketPaper } from "@/lib/domain/packets";
import type { TenantScope } from "@/lib/domain/scope";
import { brandPaper } from "./brand";
import { getJob } from "./jobs";
import { listPackets, type PacketLine } from "./packets";

export type PacketsPage = {
  readonly packets: readonly PacketLine[];
  readonly paper: PacketPaper;
  readonly customerEmail: string;
  readonly now: string;
};

/** The packets of a job, with what the forms on their page begin with. */
export async function packetsPage(scope: TenantScope, jobId: string, now = new Date()): Promise<PacketsPage> {
  const job = await getJob(scope, jobId);
  return {
    packets: await listPackets(scope, jobId),
    paper: await brandPaper(scope),
    customerEmail: job.customer.email,
    now: now.toISOString(),
  };
}

import { logs } from "@/lib/db/logs";
import type { TenantScope } from "@/lib/domain/scope";
import { type DayOverlay, dayOverlay, type OverlayChannel } from "@/lib/engineering/logs";
import { notFound } from "@/lib/errors";
import { getJob } from "./jobs";
import { timelineOf } from "./log-summary";

/** The days of a log between two instants upon each other. */
export async function logOverlay(
  scope: TenantScope,
  asked: {
    readonly jobId: string;
    readonly importId: string;
    readonly channel: OverlayChannel;
    readonly fromMs: number;
    readonly toMs: number;
  },
): Promise<DayOverlay> {
  const job = await getJob(scope, asked.jobId);
  const found = (await logs(scope).list(job.id)).find((one) => one.id === asked.importId);
  const timeline = found?.summary ? await timelineOf(scope, job, found) : null;
  if (timeline === null) throw notFound();
  return dayOverlay(timeline.samples, job.home.elevationFt ?? 0, asked.channel, asked);
}

import { type Thinned, thinned } from "@/lib/charts/decimate";
import { logs } from "@/lib/db/logs";
import type { TenantScope } from "@/lib/domain/scope";
import type { TypicalOutdoors } from "@/lib/domain/typical-outdoors";
import { type LogSamples, logMoisture } from "@/lib/engineering/logs";
import { notFound } from "@/lib/errors";
import { getJob } from "./jobs";
import { timelineOf } from "./log-summary";
import { typicalBeside } from "./typical-beside";

/** Readings of a log between two instants, few enough to draw. */
export type LogWindow = Thinned & { readonly fromMs: number; readonly toMs: number };

const MOST_BUCKETS = 700;

/** The part of a log a person has zoomed to. */
export async function logWindow(
  scope: TenantScope,
  asked: {
    readonly jobId: string;
    readonly importId: string;
    readonly fromMs: number;
    readonly toMs: number;
  },
): Promise<LogWindow> {
  const job = await getJob(scope, asked.jobId);
  const found = (await logs(scope).list(job.id)).find((one) => one.id === asked.importId);
  if (!found?.summary) throw notFound();
  const timeline = await timelineOf(scope, job, found);
  if (timeline === null) throw notFound();
  const typical = await typicalBeside(scope, job, timeline);
  return windowOf(timeline.samples, job.home.elevationFt ?? 0, asked, typical);
}

/** The channels the chart draws, between two instants. Dew points do not depend on air pressure, so the elevation matters little. */
export function windowOf(
  samples: LogSamples,
  elevationFt: number,
  { fromMs, toMs }: { readonly fromMs: number; readonly toMs: number },
  typical: TypicalOutdoors | null,
): LogWindow {
  const { channels, timeMs } = samples;
  const { indoorDewPointF, outdoorDewPointF } = logMoisture(samples, elevationFt);
  const drawn = {
    indoorF: channels.indoorF,
    setpointF: channels.setpointF,
    indoorRhPct: channels.indoorRhPct,
    indoorDewPointF,
    outdoorDewPointF,
    typicalDewPointF: typical?.dewPointF,
    first: channels.firstStageShare,
    second: channels.secondStageShare,
    fan: channels.fanShare,
  };
  return { ...thinned(timeMs, drawn, { fromMs, toMs, most: MOST_BUCKETS }), fromMs, toMs };
}

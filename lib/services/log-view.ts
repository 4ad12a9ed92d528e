import { company } from "@/lib/db/company";
import { type LogSource, logSources } from "@/lib/db/log-sources";
import { type LogImport, logs } from "@/lib/db/logs";
import {
  evaluateJob,
  type JobContext,
  logCannotTell,
  logCauses,
  logContextOf,
  type OutdoorSource,
  withoutCause,
} from "@/lib/domain/evaluate";
import type { Job } from "@/lib/domain/jobs";
import { may } from "@/lib/domain/roles";
import type { TenantScope } from "@/lib/domain/scope";
import type { TypicalOutdoors } from "@/lib/domain/typical-outdoors";
import type { Finding } from "@/lib/engineering/findings";
import {
  analyzeLog,
  type LikelyCause,
  type LoadLine,
  type LogPictures,
  logMoisture,
  logPictures,
  type RunLength,
  type TradePicture,
  tradePicture,
} from "@/lib/engineering/logs";
import { timelineOf } from "./log-summary";
import { type LogWindow, windowOf } from "./log-window";
import { typicalBeside } from "./typical-beside";

export type LogPoint = {
  readonly atMs: number;
  readonly relativeHumidityPercent: number | null;
  readonly dewPointF: number | null;
};

export type LogPanelView = {
  readonly imports: readonly LogImport[];
  readonly points: readonly LogPoint[];
  readonly limitPct: number | null;
  readonly timeZone: string;
};

/** The readings of a log by themselves, for paper. */
export async function logPanelView(
  scope: TenantScope,
  job: Job,
  chosenId: string | null,
  limitPct: number | null,
): Promise<LogPanelView> {
  const { timeZone } = await company(scope).get();
  const imports = await logs(scope).list(job.id);
  const shown = imports.find((one) => one.id === chosenId && one.summary !== null) ?? null;
  const timeline = shown && (await timelineOf(scope, job, shown));
  if (!timeline) return { imports, points: [], limitPct, timeZone };
  const { timeMs, channels } = timeline.samples;
  const { indoorDewPointF } = logMoisture(timeline.samples, job.home.elevationFt ?? 0);
  const points = Array.from(timeMs, (atMs, index) => ({
    atMs,
    relativeHumidityPercent: finite(channels.indoorRhPct?.[index]),
    dewPointF: finite(indoorDewPointF?.[index]),
  }));
  return { imports, points, limitPct, timeZone };
}

/** Where the outdoors beside a log come from, and what a typical year's are. */
export type LogOutdoors = {
  readonly from: OutdoorSource;
  readonly typical: { readonly name: string; readonly meanF: number; readonly meanDewPointF: number } | null;
};

export type LogReviewView = {
  readonly jobId: string;
  /** The house's logs and the stations beside them, newest first. */
  readonly imports: readonly LogImport[];
  /** The chosen log, or the newest. */
  readonly shown: LogImport | null;
  readonly isChosen: boolean;
  readonly outdoors: LogOutdoors | null;
  readonly window: LogWindow | null;
  readonly pictures: LogPictures | null;
  readonly loadLine: LoadLine | null;
  readonly design: { readonly outdoorF: number; readonly sensibleBtuh: number } | null;
  readonly runLengths: readonly RunLength[];
  readonly causes: readonly LikelyCause[];
  /** What stands where no cause is named. */
  readonly withoutCause: string;
  readonly cannotTell: readonly Finding[];
  readonly tradePicture: TradePicture | null;
  readonly limitPct: number | null;
  readonly timeZone: string;
  readonly sources: readonly LogSource[];
  readonly mayUpload: boolean;
};

/** Everything the humidity review shows of a job's logs. */
export async function logReviewView(
  scope: TenantScope,
  job: Job,
  context: JobContext,
): Promise<LogReviewView> {
  const imports = await logs(scope).list(job.id);
  const { timeZone } = await company(scope).get();
  const chosen = imports.find((one) => one.id === context.log?.importId);
  const shown = chosen ?? imports.find((one) => one.summary !== null) ?? null;
  const summary = chosen ? context.log : (shown?.summary ?? null);
  const timeline = shown && (await timelineOf(scope, job, shown));
  const asked = logContextOf(context, evaluateJob({ ...context, log: null }));
  const analysis = timeline && asked && analyzeLog(timeline.samples, asked);
  const outdoorFrom = timeline?.outdoorFrom ?? "none";
  const seen = { ...context, log: summary && analysis ? { ...summary, analysis, outdoorFrom } : summary };
  const typical = timeline && (await typicalBeside(scope, job, timeline));
  return {
    jobId: job.id,
    imports,
    shown,
    isChosen: chosen !== undefined,
    outdoors: timeline && { from: outdoorFrom, typical: typical && inShort(typical) },
    window:
      timeline &&
      windowOf(timeline.samples, job.home.elevationFt ?? 0, spanOf(timeline.samples.timeMs), typical),
    pictures: timeline && logPictures(timeline.samples, job.home.elevationFt ?? 0),
    loadLine: analysis?.loadLine ?? null,
    design: asked?.design ?? null,
    runLengths: analysis?.running?.runLengths ?? [],
    causes: logCauses(seen),
    withoutCause: withoutCause(seen),
    cannotTell: logCannotTell(seen),
    tradePicture: analysis ? tradePicture(analysis) : null,
    limitPct: context.inputs.load_summary.humidityLimitPct,
    timeZone: shown?.timeZone ?? timeZone,
    sources: await logSources(scope).list(),
    mayUpload: may(scope.role, "log.upload"),
  };
}

function inShort({ name, meanF, meanDewPointF }: TypicalOutdoors) {
  return { name, meanF, meanDewPointF };
}

function spanOf(timeMs: Float64Array) {
  return { fromMs: timeMs[0] ?? 0, toMs: timeMs.at(-1) ?? 0 };
}

/** A gap is kept as NaN; on screen it is nothing. */
function finite(value: number | undefined): number | null {
  return value !== undefined && Number.isFinite(value) ? value : null;
}

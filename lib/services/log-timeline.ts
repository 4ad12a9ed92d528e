import { type LogImport, logs } from "@/lib/db/logs";
import { LOG_ANALYSIS, type LogSummary, type OutdoorSource } from "@/lib/domain/evaluate";
import type { Job } from "@/lib/domain/jobs";
import type { TenantScope } from "@/lib/domain/scope";
import { analyzeLog, besideLog, type LogContext, type LogSamples } from "@/lib/engineering/logs";
import { AppError } from "@/lib/errors";
import { samplesOfDays } from "./log-days";

/** Two hourly readings of a station may lie this far apart, min; more is a gap. */
const STATION_APART_MIN = 90;

export type Timeline = { readonly samples: LogSamples; readonly outdoorFrom: OutdoorSource };

/**
 * Everything the house's loggers and stations say beside one logger's samples. Without outdoor readings the job's weather year says what it
 * usually is; that is drawn beside the log and never in its samples, so that nothing is judged by it.
 */
export async function completed(
  scope: TenantScope,
  job: Pick<Job, "id" | "weatherFileId">,
  sourceId: string,
  log: LogSamples,
): Promise<Timeline> {
  const others = newestOfEachSource(await logs(scope).list(job.id)).filter(
    (one) => one.sourceId !== sourceId,
  );
  let samples = log;
  let outdoorFrom: OutdoorSource = log.channels.outdoorF === undefined ? "none" : "log";
  for (const other of others) {
    const isStation = other.summary === null;
    if (isStation && outdoorFrom !== "none") continue;
    const lastMs = log.timeMs.at(-1) ?? 0;
    const days = await logs(scope).days(job.id, other.sourceId, new Date(lastMs + 3_600_000));
    const beside = samplesOfDays(days, other.timeZone);
    if (beside === null) continue;
    if (!isStation) {
      const take = { secondIndoorF: "indoorF", secondIndoorRhPct: "indoorRhPct" } as const;
      samples = besideLog(samples, beside, take, 2 * beside.intervalMin);
      continue;
    }
    const take = {
      outdoorF: "outdoorF",
      outdoorRhPct: "outdoorRhPct",
      outdoorDewPointF: "outdoorDewPointF",
    } as const;
    samples = besideLog(samples, beside, take, STATION_APART_MIN);
    if (samples.channels.outdoorF !== undefined) outdoorFrom = "station file";
  }
  return {
    samples,
    outdoorFrom: outdoorFrom === "none" && job.weatherFileId !== null ? "typical year" : outdoorFrom,
  };
}

function newestOfEachSource(imports: readonly LogImport[]): readonly LogImport[] {
  return imports.filter(
    (one, index) => imports.findIndex(({ sourceId }) => sourceId === one.sourceId) === index,
  );
}

/** What a timeline amounts to, as it is kept with its import. */
export function summarize(
  { samples, outdoorFrom }: Timeline,
  sourceName: string,
  askedWith: LogContext,
): Omit<LogSummary, "importId"> {
  const analysis = analyzeLog(samples, askedWith);
  const { humidity, running, period } = analysis;
  if (!humidity) {
    const message = "The file has no indoor relative humidity. Choose the column that holds it.";
    throw new AppError("UNSUPPORTED_FILE", message, { fields: [{ field: "file", message }] });
  }
  return {
    sourceName,
    firstAt: new Date(period.fromMs).toISOString(),
    lastAt: new Date(period.toMs).toISOString(),
    loggedHours: humidity.hours,
    limitPct: askedWith.humidityLimitPct,
    dryHours: humidity.dryHours,
    hoursAboveLimit: humidity.hours - humidity.dryHours,
    share50To60Pct: 100 * humidity.share50To60,
    meanRhPct: humidity.meanRhPct,
    meanDewPointF: humidity.meanDewPointF,
    longestWetSpellHours: humidity.longestWetSpell?.hours ?? 0,
    cyclesPerHour: running?.cyclesPerHour ?? null,
    medianRunMin: running?.runs?.medianMin ?? null,
    secondStageSharePct: running?.secondStageShare == null ? null : 100 * running.secondStageShare,
    outdoorFrom,
    analysis: {
      ...analysis,
      // The days are drawn from the samples; kept with every job they would weigh on every page.
      loadLine: analysis.loadLine === null ? null : { ...analysis.loadLine, days: [] },
    },
    askedWith,
    madeBy: LOG_ANALYSIS,
  };
}

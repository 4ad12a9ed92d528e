import { createHash } from "node:crypto";
import { DateTime } from "luxon";
import { company } from "@/lib/db/company";
import type { DayChannel, LogDay } from "@/lib/db/log-day";
import { logs } from "@/lib/db/logs";
import { stageRecords } from "@/lib/db/stage-records";
import type { LogSummary } from "@/lib/domain/evaluate";
import type { LogImportId } from "@/lib/domain/ids";
import type { Job } from "@/lib/domain/jobs";
import type { TenantScope } from "@/lib/domain/scope";
import { analyzeLog, type LogChannel, type LogSamples } from "@/lib/engineering/logs";
import { AppError } from "@/lib/errors";
import { readStoredFile, storeFile } from "@/lib/files/store";
import { type LogFile, type LogMapping, readLogFile } from "@/lib/schemas/log-file";
import { getJob } from "./jobs";
import { reopenDisagreeing } from "./reopen-callbacks";

export type ImportLogInput = {
  readonly jobId: string;
  readonly fileName: string;
  readonly bytes: Uint8Array;
  /** Name under which the columns of this logger are remembered. */
  readonly sourceName: string;
  /** `null`: told from the headings. */
  readonly mapping: LogMapping | null;
};

export type ImportedLog = {
  readonly importId: LogImportId;
  readonly rowsKept: number;
  readonly rowsRefused: number;
};

/** Reads a log file, keeps it as it came, and keeps what it says by day. Refused rows are named with their reason. */
export async function importLog(scope: TenantScope, input: ImportLogInput): Promise<ImportedLog> {
  const job = await getJob(scope, input.jobId);
  const records = await stageRecords(scope).latest(job.id);
  const limitPct = records.load_summary?.inputs.humidityLimitPct ?? null;
  if (limitPct === null) {
    throw new AppError(
      "CONFLICT",
      "Enter the humidity limit in the load summary first: the log is held against it.",
    );
  }
  const { timeZone } = await company(scope).get();
  const file = readLogFile(input.bytes, { zone: timeZone, mapping: input.mapping });
  if (file.kind === "refused") {
    throw new AppError("UNSUPPORTED_FILE", file.reason, {
      fields: [{ field: "file", message: file.reason }],
      details: { reason: file.code, headings: file.headings },
    });
  }
  const summary = summarize(file.samples, job, limitPct, input.sourceName);
  const stored = await storeFile(scope.tenantId, input.bytes, "log", "file");
  const problems = [
    ...file.refused.map(({ row, reason }) => ({ row, reason })),
    ...file.duplicates.map(({ row }) => ({
      row,
      reason: "Same time as an earlier row; the first one counts.",
    })),
  ];
  const first = file.samples.timeMs[0] ?? 0;
  const importId = await logs(scope).add({
    jobId: job.id,
    source: {
      name: input.sourceName,
      headerFingerprint: createHash("sha256").update(file.headings.join("\u001f")).digest("hex"),
      mapping: file.mapping,
      timeZone,
    },
    fileName: input.fileName,
    sha256: stored.sha256,
    sizeBytes: stored.size,
    rowsRead: file.rowCount,
    rowsKept: file.samples.timeMs.length,
    problems,
    firstAt: new Date(first),
    lastAt: new Date(file.samples.timeMs.at(-1) ?? first),
    summary,
    days: daysOf(file, timeZone),
  });
  await reopenDisagreeing(scope, job.id, limitPct, DateTime.now().setZone(timeZone).toISODate() ?? "");
  return { importId, rowsKept: file.samples.timeMs.length, rowsRefused: problems.length };
}

/** The summary of an import against the limit that counts now; read again from the kept file when the limit has moved. */
export async function logSummary(
  scope: TenantScope,
  job: Job,
  importId: string,
  limitPct: number | null,
): Promise<LogSummary | null> {
  const found = (await logs(scope).list(job.id)).find((one) => one.id === importId);
  if (!found || limitPct === null) return null;
  if (found.summary.limitPct === limitPct) return found.summary;
  const bytes = await readStoredFile(scope.tenantId, found.sha256);
  const file = readLogFile(bytes, { zone: found.timeZone, mapping: found.mapping as LogMapping });
  if (file.kind === "refused") return null;
  const summary = summarize(file.samples, job, limitPct, found.sourceName);
  await logs(scope).resummarize(importId, summary);
  return { ...summary, importId };
}

function summarize(
  samples: LogSamples,
  job: Job,
  limitPct: number,
  sourceName: string,
): Omit<LogSummary, "importId"> {
  const { elevationFt } = job.home;
  if (elevationFt === null)
    throw new AppError("CONFLICT", "Enter the home's elevation first: humidity depends on it.");
  const { humidity, running, period } = analyzeLog(samples, {
    humidityLimitPct: limitPct,
    elevationFt,
    deliveredSensibleBtuhByStage: null,
    design: null,
  });
  if (!humidity) {
    const message = "The file has no indoor relative humidity. Choose the column that holds it.";
    throw new AppError("UNSUPPORTED_FILE", message, { fields: [{ field: "file", message }] });
  }
  return {
    sourceName,
    firstAt: new Date(period.fromMs).toISOString(),
    lastAt: new Date(period.toMs).toISOString(),
    loggedHours: humidity.hours,
    limitPct,
    dryHours: humidity.dryHours,
    hoursAboveLimit: humidity.hours - humidity.dryHours,
    share50To60Pct: 100 * humidity.share50To60,
    meanRhPct: humidity.meanRhPct,
    meanDewPointF: humidity.meanDewPointF,
    longestWetSpellHours: humidity.longestWetSpell?.hours ?? 0,
    cyclesPerHour: running?.cyclesPerHour ?? null,
    medianRunMin: running?.runs?.medianMin ?? null,
    secondStageSharePct: running?.secondStageShare == null ? null : 100 * running.secondStageShare,
  };
}

const CHANNEL_OF: Readonly<Partial<Record<LogChannel, DayChannel>>> = {
  indoorF: "indoorDbF",
  indoorRhPct: "indoorRhPct",
  outdoorF: "outdoorDbF",
  outdoorRhPct: "outdoorRhPct",
  setpointF: "setpointF",
  firstStageShare: "firstStageFraction",
  secondStageShare: "secondStageFraction",
  auxiliaryShare: "auxiliaryFraction",
  fanShare: "fanFraction",
};

/** Cuts the samples at the house's midnights. */
function daysOf({ samples }: LogFile, timeZone: string): readonly LogDay[] {
  const { timeMs, utcOffsetMin } = samples;
  const days: LogDay[] = [];
  let from = 0;
  const dayAt = (index: number) =>
    Math.floor(((timeMs[index] ?? 0) + (utcOffsetMin[index] ?? 0) * 60_000) / 86_400_000);
  for (let index = 1; index <= timeMs.length; index++) {
    if (index < timeMs.length && dayAt(index) === dayAt(from)) continue;
    days.push(dayFrom(samples, from, index, timeZone));
    from = index;
  }
  return days;
}

function dayFrom(samples: LogSamples, from: number, to: number, timeZone: string): LogDay {
  const startsAt = DateTime.fromMillis(samples.timeMs[from] ?? 0, { zone: timeZone }).startOf("day");
  const channels = Object.entries(CHANNEL_OF).flatMap(([channel, name]) => {
    const values = samples.channels[channel as LogChannel];
    return values === undefined ? [] : [[name, values.slice(from, to)]];
  });
  return {
    day: startsAt.toISODate() ?? "",
    startsAt: startsAt.toJSDate(),
    offsetMinutes: samples.timeMs.slice(from, to).map((time) => (time - startsAt.toMillis()) / 60_000),
    channels: Object.fromEntries(channels),
  };
}

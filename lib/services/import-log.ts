import { company } from "@/lib/db/company";
import { logSources } from "@/lib/db/log-sources";
import { logs, type RowRemark } from "@/lib/db/logs";
import { stageRecords } from "@/lib/db/stage-records";
import { withTenant } from "@/lib/db/with-tenant";
import { evaluateJob, logContextOf } from "@/lib/domain/evaluate";
import type { JobId, LogImportId } from "@/lib/domain/ids";
import type { Job } from "@/lib/domain/jobs";
import type { TenantScope } from "@/lib/domain/scope";
import { ImpossibleStateError } from "@/lib/engineering/errors";
import { type LogContext, type LogSamples, mergeSamples } from "@/lib/engineering/logs";
import { AppError, invalidInput } from "@/lib/errors";
import { storeFile } from "@/lib/files/store";
import { findZone, headerFingerprint, type LogMapping } from "@/lib/schemas/log-file";
import { jobContext } from "./evaluate";
import { getJob } from "./jobs";
import { daysOfSamples, samplesOfDays } from "./log-days";
import { completed, summarize } from "./log-timeline";
import { keepRemarks } from "./log-remarks";
import { type ReadUpload, uploadSteps } from "./log-upload";
import { reopenDisagreeing } from "./reopen-callbacks";

export type ImportLogInput = {
  readonly jobId: string;
  readonly fileName: string;
  readonly bytes: Uint8Array;
  /** Name under which the columns of this logger are remembered. */
  readonly sourceName: string;
  /** `null`: told from the headings. */
  readonly mapping: LogMapping | null;
  /** Clock of the logger; `null` for the company's own zone. */
  readonly timeZone?: string | null;
  /** Set when the person has given up. */
  readonly signal?: AbortSignal;
  /** For long files: called between short steps with the share that is done, and waited for. It may throw to end the work. */
  readonly between?: (share: number) => Promise<void>;
};

export type ImportedLog = {
  readonly importId: LogImportId;
  readonly rowsKept: number;
  readonly rowsRefused: number;
  /** Samples that were kept already and are not doubled. */
  readonly overlap: number;
  readonly isStation: boolean;
};

const LONGEST_MS = 120_000;
/** Before any log and after every one. */
const EVER = new Date("9999-01-01T00:00:00Z");

/**
 * Reads a log file, keeps it as it came, and adds what it says to its logger's days. Refused rows are named with their reason. A file
 * with outdoor readings alone is a weather station beside the house's log.
 */
export async function importLog(scope: TenantScope, input: ImportLogInput): Promise<ImportedLog> {
  const { job, asked, timeZone } = await readyForLog(scope, input);
  const read = await readInSteps(input, timeZone);
  input.signal?.throwIfAborted();
  const stored = await storeFile(scope.tenantId, input.bytes, "log", "file");
  const remarksKey = await keepRemarks(scope, read.remarks);
  await input.between?.(READ_SHARE);
  const { importId, facts, samples } = await withTenant(
    scope,
    async () => {
      const sourceId = await logSources(scope).remember({
        name: input.sourceName,
        headerFingerprint: headerFingerprint(read.headings),
        mapping: read.mapping,
        timeZone,
      });
      await refuseTooLong(scope, job.id, sourceId, read.samples.timeMs.length);
      const before = samplesOfDays(await logs(scope).days(job.id, sourceId, EVER), timeZone);
      const { samples, overlap } =
        before === null ? { samples: read.samples, overlap: 0 } : merged(before, read.samples);
      const isStation = samples.channels.indoorRhPct === undefined;
      const facts = { rowsKept: read.samples.timeMs.length, rowsRefused: read.notTaken, isStation };
      const whole = { facts: { overlap, ...facts }, samples };
      const same = await logs(scope).findSame(job.id, sourceId, stored.sha256);
      if (same !== null) return { ...whole, importId: same };
      const [from, to] = [read.samples.timeMs[0] ?? 0, read.samples.timeMs.at(-1) ?? 0];
      const importId = await logs(scope).add({
        jobId: job.id,
        sourceId,
        timeZone,
        fileName: input.fileName,
        sha256: stored.sha256,
        sizeBytes: stored.size,
        rowsRead: read.rowCount,
        rowsKept: facts.rowsKept,
        problems: [...overlapRemark(overlap), ...read.remarks],
        remarksKey,
        firstAt: new Date(from),
        lastAt: new Date(to),
        summary: isStation
          ? null
          : await summaryOf(scope, job.id, { sourceId, name: input.sourceName }, samples, asked),
        days: daysOfSamples(samples, timeZone).filter(({ startsAt }) => {
          const startMs = startsAt.getTime();
          return startMs <= to && startMs + 25 * 3_600_000 > from;
        }),
      });
      return { ...whole, importId };
    },
    { timeoutMs: LONGEST_MS },
  );
  if (!facts.isStation) await reopenDisagreeing(scope, job.id, { samples, timeZone }, asked);
  return { importId, ...facts };
}

/** Reading is this much of the work; judging and keeping are the rest. */
const READ_SHARE = 0.7;

async function readInSteps(input: ImportLogInput, timeZone: string): Promise<ReadUpload> {
  const steps = uploadSteps(input, timeZone);
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
    await input.between?.(READ_SHARE * value);
  }
}

/**
 * What a log of the job would be held against, and its logger's clock.
 *
 * @throws AppError `CONFLICT` while the job lacks what a log is held against; `INVALID_INPUT` for a clock that is none.
 */
export async function readyForLog(
  scope: TenantScope,
  input: Pick<ImportLogInput, "jobId" | "timeZone">,
): Promise<{ readonly job: Job; readonly asked: LogContext; readonly timeZone: string }> {
  const job = await getJob(scope, input.jobId);
  const records = await stageRecords(scope).latest(job.id);
  const context = await jobContext(scope, job, records);
  const asked = logContextOf(context, evaluateJob({ ...context, log: null }));
  if (asked === null) {
    const missing =
      context.elevationFt === null ? "the home's elevation" : "the humidity limit in the load summary";
    throw new AppError("CONFLICT", `Enter ${missing} first: the log is held against it.`);
  }
  const timeZone = input.timeZone ?? (await company(scope).get()).timeZone;
  if (findZone(timeZone) === null) {
    throw invalidInput([
      {
        field: "timeZone",
        message: `“${timeZone.slice(0, 60)}” is no time zone; choose the logger's, such as America/Chicago.`,
      },
    ]);
  }
  return { job, asked, timeZone };
}

async function summaryOf(
  scope: TenantScope,
  jobId: Parameters<typeof completed>[1],
  source: { readonly sourceId: string; readonly name: string },
  samples: LogSamples,
  asked: LogContext,
) {
  return summarize(await completed(scope, jobId, source.sourceId, samples), source.name, asked);
}

/** More than two years of minutes; all of a logger's samples are judged together, within 512 MB of memory. */
const MOST_SAMPLES = 1_500_000;

async function refuseTooLong(scope: TenantScope, jobId: JobId, sourceId: string, more: number) {
  const kept = await logs(scope).sampleCount(jobId, sourceId);
  if (kept + more <= MOST_SAMPLES) return;
  const message = `This logger would hold more than ${MOST_SAMPLES.toLocaleString("en-US")} readings. Give the file a logger name of its own, for instance with its years.`;
  throw new AppError("UNSUPPORTED_FILE", message, { fields: [{ field: "sourceName", message }] });
}

function merged(before: LogSamples, newer: LogSamples) {
  try {
    return mergeSamples(before, newer);
  } catch (error) {
    if (!(error instanceof ImpossibleStateError)) throw error;
    throw new AppError("UNSUPPORTED_FILE", error.message, {
      cause: error,
      fields: [{ field: "sourceName", message: error.message }],
    });
  }
}

function overlapRemark(overlap: number): readonly RowRemark[] {
  return overlap === 0
    ? []
    : [{ row: 0, reason: `${overlap} rows are of times kept already; they are not counted twice.` }];
}

import { company } from "@/lib/db/company";
import { logSources } from "@/lib/db/log-sources";
import { logs, type RowRemark } from "@/lib/db/logs";
import { stageRecords } from "@/lib/db/stage-records";
import { withTenant } from "@/lib/db/with-tenant";
import { workItems } from "@/lib/db/work-items";
import { evaluateJob, logContextOf } from "@/lib/domain/evaluate";
import type { LogImportId } from "@/lib/domain/ids";
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
import { keepRemarks } from "./log-remarks";
import { completed, summarize } from "./log-timeline";
import { type Pause, readLogUpload } from "./log-upload";
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
  /** Called between the steps of reading; what it throws ends the import, and nothing is kept. */
  readonly pause?: Pause;
  /** The work on the queue that is done when this is kept, all or nothing. */
  readonly workId?: string;
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
  const { job, asked, timeZone } = await askedOfLog(scope, input);
  const read = await readLogUpload(input, timeZone, input.pause);
  const stored = await storeFile(scope.tenantId, input.bytes, "log", "file");
  const { importId, facts, samples } = await withTenant(
    scope,
    async () => {
      const sourceId = await logSources(scope).remember({
        name: input.sourceName,
        headerFingerprint: headerFingerprint(read.headings),
        mapping: read.mapping,
        timeZone,
      });
      const before = samplesOfDays(await logs(scope).days(job.id, sourceId, EVER), timeZone);
      const { samples, overlap } =
        before === null ? { samples: read.samples, overlap: 0 } : merged(before, read.samples);
      refuseTooLong(samples.timeMs.length);
      const problems = [...overlapRemark(overlap), ...read.remarks];
      const isStation = samples.channels.indoorRhPct === undefined;
      const facts = { rowsKept: read.samples.timeMs.length, rowsRefused: read.notTaken, isStation };
      const whole = { facts: { overlap, ...facts }, samples };
      const same = await logs(scope).findSame(job.id, sourceId, stored.sha256);
      if (same !== null) {
        if (input.workId) await workItems(scope).finishWith(input.workId, importedWords(whole.facts));
        return { ...whole, importId: same };
      }
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
        problems,
        remarksKey: await keepRemarks(scope, problems),
        firstAt: new Date(from),
        lastAt: new Date(to),
        summary: isStation
          ? null
          : await summaryOf(scope, job, { sourceId, name: input.sourceName }, samples, asked),
        days: daysOfSamples(samples, timeZone).filter(({ startsAt }) => {
          const startMs = startsAt.getTime();
          return startMs <= to && startMs + 25 * 3_600_000 > from;
        }),
      });
      if (input.workId) await workItems(scope).finishWith(input.workId, importedWords(whole.facts));
      return { ...whole, importId };
    },
    { timeoutMs: LONGEST_MS },
  );
  if (!facts.isStation) await reopenDisagreeing(scope, job.id, { samples, timeZone }, asked);
  return { importId, ...facts };
}

/** What came of an import, in words. */
export function importedWords(facts: Omit<ImportedLog, "importId">): string {
  const { rowsKept, rowsRefused, overlap, isStation } = facts;
  const rows = `${rowsKept.toLocaleString("en-US")} rows imported, ${rowsRefused} rows or cells not taken`;
  const twice = overlap > 0 ? `, ${overlap} of them kept before and not doubled` : "";
  return `${rows}${twice}. ${isStation ? "Kept as a weather station beside the house’s log." : "Choose this log in the record below."}`;
}

/** What a log of a job is held against, and its clock; refused before anything is read where that is missing. */
export async function askedOfLog(
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
  job: Parameters<typeof completed>[1],
  source: { readonly sourceId: string; readonly name: string },
  samples: LogSamples,
  asked: LogContext,
) {
  return summarize(await completed(scope, job, source.sourceId, samples), source.name, asked);
}

/** Nearly two years of minutes: all of a logger's samples are in memory together when they are judged. */
const MOST_SAMPLES = 1_000_000;

function refuseTooLong(samples: number): void {
  if (samples <= MOST_SAMPLES) return;
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

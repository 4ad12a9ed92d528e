import { isDeepStrictEqual } from "node:util";
import { type LogImport, logs } from "@/lib/db/logs";
import { LOG_ANALYSIS, type LogSummary } from "@/lib/domain/evaluate";
import type { Job } from "@/lib/domain/jobs";
import type { TenantScope } from "@/lib/domain/scope";
import type { LogContext } from "@/lib/engineering/logs";
import { samplesOfDays } from "./log-days";
import { completed, summarize, type Timeline } from "./log-timeline";

/** The samples behind an import: everything its logger had told up to its end, with what stands beside it. */
export async function timelineOf(scope: TenantScope, job: Job, found: LogImport): Promise<Timeline | null> {
  const days = await logs(scope).days(
    job.id,
    found.sourceId,
    new Date(found.summary?.lastAt ?? found.lastAt),
  );
  const samples = samplesOfDays(days, found.timeZone);
  return samples === null ? null : completed(scope, job, found.sourceId, samples);
}

/** What an import says, held against what the job asks now; read again from the kept days when that has changed. */
export async function logSummary(
  scope: TenantScope,
  job: Job,
  importId: string,
  askedWith: LogContext | null,
): Promise<LogSummary | null> {
  const found = (await logs(scope).list(job.id)).find((one) => one.id === importId);
  if (!found?.summary || askedWith === null) return null;
  const isOfNow = found.summary.madeBy === LOG_ANALYSIS;
  if (isOfNow && isDeepStrictEqual(found.summary.askedWith, askedWith)) return found.summary;
  const timeline = await timelineOf(scope, job, found);
  if (timeline === null) return null;
  const summary = summarize(timeline, found.sourceName, askedWith);
  await logs(scope).resummarize(importId, summary);
  return { ...summary, importId };
}

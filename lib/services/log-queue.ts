import { setImmediate as breathe } from "node:timers/promises";
import { z } from "zod";
import { logs } from "@/lib/db/logs";
import { workItems } from "@/lib/db/work-items";
import type { FieldProblem } from "@/lib/domain/problems";
import type { TenantScope } from "@/lib/domain/scope";
import type { WorkItemId, WorkState } from "@/lib/domain/work";
import { AppError, notFound } from "@/lib/errors";
import { deleteStoredFile, readStoredFile, storeFile } from "@/lib/files/store";
import { logMappingSchema } from "@/lib/schemas/log-file";
import { askedOfLog, type ImportLogInput, importedWords, importLog } from "./import-log";
import { getJob } from "./jobs";

const TASK = "import log";
const SHARES = 100;
/** How often a running import is asked whether it is still wanted. */
const REPORT_MS = 300;

const askedSchema = z.object({
  jobId: z.uuid(),
  fileName: z.string(),
  sha256: z.string(),
  sourceName: z.string(),
  mapping: logMappingSchema.nullable(),
  timeZone: z.string(),
});
const refusedSchema = z.object({ fields: z.array(z.object({ field: z.string(), message: z.string() })) });

type Report = (at: {
  readonly done: number;
  readonly total: number;
  readonly progress: unknown;
}) => Promise<void>;

/** Keeps an uploaded log's file and puts its reading on the queue. What can be refused without reading it is refused at once. */
export async function queueLogImport(
  scope: TenantScope,
  input: Omit<ImportLogInput, "pause" | "workId">,
): Promise<{ readonly workId: WorkItemId }> {
  const { job, timeZone } = await askedOfLog(scope, input);
  const { sha256 } = await storeFile(scope.tenantId, input.bytes, "log", "file");
  const { fileName, sourceName, mapping } = input;
  const workId = await workItems(scope).add({
    task: TASK,
    title: `Read the log “${fileName}” of job ${job.number}`,
    input: { jobId: job.id, fileName, sha256, sourceName, mapping, timeZone },
  });
  return { workId };
}

/** Reads a queued log. It begins anew with every try: until the end nothing of it is kept. */
export async function runLogImport(
  scope: TenantScope,
  workId: string,
  input: unknown,
  report: Report,
): Promise<string> {
  const { sha256, ...asked } = askedSchema.parse(input);
  const bytes = await readStoredFile(scope.tenantId, sha256);
  let said = 0;
  const pause = async (share: number) => {
    // Others' requests come first, however long the file.
    await breathe();
    if (performance.now() - said < REPORT_MS) return;
    said = performance.now();
    await report({ done: Math.round(90 * share), total: SHARES, progress: null });
  };
  try {
    return importedWords(await importLog(scope, { ...asked, bytes, pause, workId }));
  } catch (error) {
    if (error instanceof AppError)
      await report({ done: 0, total: SHARES, progress: { fields: error.fields } });
    throw error;
  }
}

export type LogImportProgress = {
  readonly state: WorkState;
  /** 0 to 1. */
  readonly share: number;
  /** What came of it, or why it was refused. */
  readonly message: string;
  readonly fields: readonly FieldProblem[];
};

type Asked = { readonly jobId: string; readonly workId: string };

/** How a queued log of a job is getting on. */
export async function logImportProgress(scope: TenantScope, asked: Asked): Promise<LogImportProgress> {
  const { item, progress } = await found(scope, asked);
  const refused = refusedSchema.safeParse(progress);
  return {
    state: item.state,
    share: item.state === "done" ? 1 : item.done / SHARES,
    message: item.state === "done" ? item.result : item.problem,
    fields: item.state === "failed" && refused.success ? refused.data.fields : [],
  };
}

/** Stops a queued log: nothing of it is kept, its file neither unless something else needs it. */
export async function cancelLogImport(scope: TenantScope, asked: Asked): Promise<LogImportProgress> {
  const { input } = await found(scope, asked);
  await workItems(scope).cancel(asked.workId);
  const { sha256 } = askedSchema.parse(input);
  if (!(await logs(scope).needsFile(sha256))) await deleteStoredFile(scope.tenantId, sha256);
  return logImportProgress(scope, asked);
}

async function found(scope: TenantScope, { jobId, workId }: Asked) {
  await getJob(scope, jobId);
  const work = await workItems(scope).find(TASK, workId);
  if (work === null || askedSchema.safeParse(work.input).data?.jobId !== jobId) throw notFound();
  return work;
}

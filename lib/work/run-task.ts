import { randomUUID } from "node:crypto";
import { z } from "zod";
import { scopeOfCompany, scopeOfMember } from "@/lib/auth/scope";
import { workItems } from "@/lib/db/work-items";
import type { TenantScope } from "@/lib/domain/scope";
import { WORK_TRIES, WorkCancelledError } from "@/lib/domain/work";
import { AppError, type ErrorCode } from "@/lib/errors";
import { failureFacts } from "@/lib/server/failure";
import { refusalFor } from "@/lib/server/outcome";
import { log } from "@/lib/server/request-log";
import type { TaskDefinition } from "./tasks";

/** The company is stamped by the database; who asked, by the code that adds work. */
const payloadSchema = z.object({ tenantId: z.uuid(), workId: z.uuid(), askedBy: z.uuid() });

/** The queue's own pauses: e to the power of the try, seconds. */
const pauseMs = (attempt: number) => Math.exp(Math.min(10, attempt)) * 1_000;

/** What was asked is wrong itself; another try would say the same. */
const FINAL: ReadonlySet<ErrorCode> = new Set(["INVALID_INPUT", "UNSUPPORTED_FILE", "TOO_LARGE"]);

/** One try of one piece of work, with its state kept. Throws what failed, so that the queue tries again. */
export async function runTask(name: string, task: TaskDefinition, payload: unknown): Promise<void> {
  const { tenantId, workId, askedBy } = payloadSchema.parse(payload);
  const company = await scopeOfCompany(tenantId);
  // A company that was closed meanwhile wants nothing done any more.
  if (company === null) return;
  const items = workItems(company);
  const begun = await items.begin(workId);
  if (begun === null) return;
  const started = performance.now();
  const note = { work: name, workId, attempt: begun.attempt };
  try {
    if (begun.attempt > WORK_TRIES)
      return await items.fail(workId, `The server stopped ${WORK_TRIES} times while this ran.`, null);
    const scope = await scopeFor(task, { tenantId, askedBy }, company);
    if (scope === null)
      return await items.fail(workId, "Who asked for this is no member of the company any more.", null);
    const result = await task.run(
      scope,
      begun.input,
      begun.progress,
      (at) => items.report(workId, at),
      workId,
    );
    await items.finish(workId, result);
    log().info({ ...note, ms: Math.round(performance.now() - started), ok: true });
  } catch (error) {
    if (error instanceof WorkCancelledError) return log().info({ ...note, cancelled: true });
    const errorId = randomUUID();
    log().error({ ...note, errorId, error: failureFacts(error) });
    const isFinal = error instanceof AppError && FINAL.has(error.code);
    const last = isFinal || begun.attempt >= WORK_TRIES;
    const { message } = refusalFor(error, errorId);
    await items.fail(workId, message, last ? null : new Date(Date.now() + pauseMs(begun.attempt)));
    // Thrown, it would be tried again.
    if (!isFinal) throw error;
  }
}

async function scopeFor(
  task: TaskDefinition,
  { tenantId, askedBy }: { readonly tenantId: string; readonly askedBy: string },
  company: TenantScope,
): Promise<TenantScope | null> {
  return task.actsFor === "company" ? company : scopeOfMember(askedBy, tenantId);
}

import type { z } from "zod";
import { noteSentLog } from "@/lib/db/sent-logs";
import type { TenantScope } from "@/lib/domain/scope";
import type { followLog, sendLog } from "@/lib/schemas/api";
import { logImportProgress, queueLogImport } from "../log-queue";
import { once, type Sending } from "./once";

type Sent = z.output<typeof sendLog.query> & { readonly jobId: string; readonly bytes: Uint8Array };

/** Takes a log to be read in the background, once a key. */
export function apiSendLog(
  scope: TenantScope,
  { timeZone, ...log }: Sent,
  sending: Sending,
): Promise<z.input<typeof sendLog.answer>> {
  return once(scope, "api log", sending, async () => {
    const { workId } = await queueLogImport(scope, { ...log, mapping: null, timeZone: timeZone ?? null });
    const { jobId, fileName, sourceName } = log;
    await noteSentLog(scope, { jobId, workId, fileName, sourceName });
    return { answer: { workId }, entityId: workId };
  });
}

export async function apiFollowLog(
  scope: TenantScope,
  asked: { readonly jobId: string; readonly workId: string },
): Promise<z.input<typeof followLog.answer>> {
  const progress = await logImportProgress(scope, asked);
  return { ...progress, fields: [...progress.fields] };
}

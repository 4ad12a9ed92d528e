import type { z } from "zod";
import { newestCallbacks } from "@/lib/db/newest-callbacks";
import type { Callback } from "@/lib/domain/callbacks";
import { asId } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import type { addCallback, listCallbacks } from "@/lib/schemas/api";
import { logCallback } from "../callbacks";
import { once, type Sending } from "./once";

export async function apiCallbacks(
  scope: TenantScope,
  { limit, cursor, jobId, state }: z.output<typeof listCallbacks.query>,
): Promise<z.input<typeof listCallbacks.answer>> {
  const wanted = { jobId: jobId === undefined ? null : asId<"job">(jobId), state: state ?? null };
  // One more than is shown tells whether there are more.
  const found = await newestCallbacks(scope, wanted, { take: limit + 1, before: cursor ?? null });
  const shown = found.slice(0, limit);
  return {
    callbacks: shown.map(callbackAnswer),
    nextCursor: found.length > limit ? (shown.at(-1)?.id ?? null) : null,
  };
}

export function apiAddCallback(
  scope: TenantScope,
  input: z.output<typeof addCallback.body.schema>,
  sending: Sending,
): Promise<z.input<typeof addCallback.answer>> {
  return once(scope, "api callback", sending, async () => {
    const id = await logCallback(scope, input);
    return { answer: { id }, entityId: id };
  });
}

function callbackAnswer({ job, ...callback }: Callback) {
  return { ...callback, jobId: job.id, jobNumber: job.number, customerName: job.customerName };
}

import { z } from "zod";
import { invalidInput } from "@/lib/errors";
import { type SyncStartupInput, syncStartupSchema } from "@/lib/schemas/sync";
import { readBodyUpTo } from "@/lib/server/limited-body";
import { route } from "@/lib/server/route";
import { refuseUnstorableText } from "@/lib/server/storable-text";
import { syncStartup } from "@/lib/services/sync-startup";

/** A whole startup record with long notes stays below a tenth of this. */
const MOST_BYTES = 200_000;

/** Takes what a phone has entered since its last contact. Safe to repeat. */
export const PUT = route({
  name: "sync startup record",
  permission: "startup.fill",
  forDevice: true,
  schema: z.object({ jobId: z.uuid() }),
  run: async (scope, { jobId }, request) => syncStartup(scope, { jobId, ...(await readChanges(request)) }),
});

async function readChanges(request: Request): Promise<SyncStartupInput> {
  const tooLarge = { field: "fields", message: "This upload is too large. Send fewer fields at once." };
  const bytes = await readBodyUpTo(request, MOST_BYTES, tooLarge);
  let body: unknown;
  try {
    body = JSON.parse(new TextDecoder().decode(bytes));
  } catch {
    throw invalidInput([{ field: "body", message: "This upload arrived damaged. Send it again." }]);
  }
  refuseUnstorableText(body);
  return syncStartupSchema.parse(body);
}

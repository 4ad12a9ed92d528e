import { z } from "zod";
import { syncStartupSchema } from "@/lib/schemas/sync";
import { readJson } from "@/lib/server/json-body";
import { route } from "@/lib/server/route";
import { syncStartup } from "@/lib/services/sync-startup";

/** A whole startup record with long notes stays below a tenth of this. */
const MOST_BYTES = 200_000;

/** Takes what a phone has entered since its last contact. Safe to repeat. */
export const PUT = route({
  name: "sync startup record",
  permission: "startup.fill",
  forDevice: true,
  schema: z.object({ jobId: z.uuid() }),
  run: async (scope, { jobId }, request) =>
    syncStartup(scope, {
      jobId,
      ...syncStartupSchema.parse(await readJson(request, MOST_BYTES, "fields")),
    }),
});

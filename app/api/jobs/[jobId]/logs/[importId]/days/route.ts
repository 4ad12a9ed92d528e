import { z } from "zod";
import { OVERLAY_CHANNELS } from "@/lib/engineering/logs";
import { invalidInput } from "@/lib/errors";
import { route } from "@/lib/server/route";
import { logOverlay } from "@/lib/services/log-overlay";

const instant = z.coerce.number().int().min(0).max(4_102_444_800_000);

/** The days of a log between two instants, upon each other by the house's clock. */
export const GET = route({
  name: "read log days",
  permission: "job.read",
  schema: z.object({
    jobId: z.uuid(),
    importId: z.uuid(),
    channel: z.enum(OVERLAY_CHANNELS),
    fromMs: instant,
    toMs: instant,
  }),
  run: async (scope, asked) => {
    if (asked.fromMs > asked.toMs)
      throw invalidInput([{ field: "toMs", message: "The time ends before it begins." }]);
    return logOverlay(scope, asked);
  },
});

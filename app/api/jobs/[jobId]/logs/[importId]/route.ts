import { z } from "zod";
import { route } from "@/lib/server/route";
import { logWindow } from "@/lib/services/log-window";

const instant = z.coerce.number().int().min(0).max(4_102_444_800_000);

/** The readings of a log between two instants, few enough to draw. */
export const GET = route({
  name: "read log window",
  permission: "job.read",
  schema: z.object({ jobId: z.uuid(), importId: z.uuid(), fromMs: instant, toMs: instant }),
  run: (scope, asked) => logWindow(scope, asked),
});

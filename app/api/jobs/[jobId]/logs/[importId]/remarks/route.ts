import { z } from "zod";
import { route } from "@/lib/server/route";
import { remarksCsv } from "@/lib/services/log-remarks";

/** Every row of a log that was not taken, with its reason, as CSV. */
export const GET = route({
  name: "export log remarks",
  permission: "job.read",
  schema: z.object({ jobId: z.uuid(), importId: z.uuid() }),
  run: async (scope, asked) =>
    new Response(await remarksCsv(scope, asked), {
      headers: {
        "content-type": "text/csv; charset=utf-8",
        "content-disposition": 'attachment; filename="rows-not-taken.csv"',
        "cache-control": "private, no-store",
      },
    }),
});

import { z } from "zod";
import { route } from "@/lib/server/route";
import { readMonth } from "@/lib/services/month-digest";

/** The owner's month as a PDF, as it was made. */
export const GET = route({
  name: "read month",
  permission: "across-jobs.read",
  schema: z.object({ digestId: z.uuid() }),
  run: async (scope, { digestId }) => {
    const { bytes, fileName } = await readMonth(scope, digestId);
    return new Response(Buffer.from(bytes), {
      headers: {
        "content-type": "application/pdf",
        "content-disposition": `inline; filename="${fileName}"`,
        "cache-control": "private, no-store",
      },
    });
  },
});

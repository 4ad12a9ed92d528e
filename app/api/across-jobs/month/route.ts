import { z } from "zod";
import { route } from "@/lib/server/route";
import { monthDigest } from "@/lib/services/month-digest";

/** The owner's month as a PDF. */
export const GET = route({
  name: "read month",
  permission: "across-jobs.read",
  schema: z.object({
    month: z
      .string()
      .regex(/^20\d\d-(0[1-9]|1[0-2])$/)
      .optional(),
  }),
  run: async (scope, { month }) => {
    const { bytes, fileName } = await monthDigest(scope, month ?? null);
    return new Response(Buffer.from(bytes), {
      headers: {
        "content-type": "application/pdf",
        "content-disposition": `inline; filename="${fileName}"`,
        "cache-control": "private, no-store",
      },
    });
  },
});

import { z } from "zod";
import { route } from "@/lib/server/route";
import { refuseUnstorableText } from "@/lib/server/storable-text";
import { readUpload } from "@/lib/server/upload";
import { addReport, REPORT_LIMITS } from "@/lib/services/design-reports";

/** Takes a designer's report as a PDF. */
export const POST = route({
  name: "add report",
  permission: "design.edit",
  schema: z.object({ jobId: z.uuid() }),
  run: async (scope, { jobId }, request) => {
    const { file } = await readUpload(request, "file", REPORT_LIMITS.maxBytes, REPORT_LIMITS.fix);
    refuseUnstorableText({ file: file.name });
    const bytes = new Uint8Array(await file.arrayBuffer());
    return addReport(scope, { jobId, fileName: file.name.slice(-120), bytes });
  },
});

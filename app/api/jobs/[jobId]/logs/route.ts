import { z } from "zod";
import { MOST_LOG_BYTES } from "@/lib/domain/file-limits";
import { invalidInput } from "@/lib/errors";
import { type LogMapping, logMappingSchema } from "@/lib/schemas/log-file";
import { route } from "@/lib/server/route";
import { refuseUnstorableText } from "@/lib/server/storable-text";
import { readUpload } from "@/lib/server/upload";
import { queueLogImport } from "@/lib/services/log-queue";

/** Takes one log file of a job's house and answers the work that reads it. */
export const POST = route({
  name: "import log",
  permission: "log.upload",
  schema: z.object({ jobId: z.uuid() }),
  run: async (scope, { jobId }, request) => {
    const { file, form } = await readUpload(request, "file", MOST_LOG_BYTES);
    const sourceName = String(form.get("sourceName") ?? "").trim();
    if (sourceName === "" || sourceName.length > 80) {
      throw invalidInput([
        {
          field: "sourceName",
          message: "Name the logger in at most 80 characters, for instance “hall sensor”.",
        },
      ]);
    }
    const timeZone = String(form.get("timeZone") ?? "").trim() || null;
    refuseUnstorableText({ sourceName, file: file.name, timeZone: timeZone ?? "" });
    return queueLogImport(scope, {
      jobId,
      fileName: file.name.slice(-120),
      bytes: new Uint8Array(await file.arrayBuffer()),
      sourceName,
      mapping: readMapping(form.get("mapping")),
      timeZone,
    });
  },
});

/** Which column is which, as the form sends it; nothing when the headings shall tell. */
function readMapping(sent: FormDataEntryValue | null): LogMapping | null {
  if (typeof sent !== "string" || sent === "") return null;
  try {
    return logMappingSchema.parse(JSON.parse(sent));
  } catch {
    throw invalidInput([{ field: "mapping", message: "Choose again which column holds what." }]);
  }
}

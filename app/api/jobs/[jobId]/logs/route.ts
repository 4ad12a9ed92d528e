import { z } from "zod";
import { invalidInput } from "@/lib/errors";
import { logMappingSchema } from "@/lib/schemas/log-file";
import { readUpload } from "@/lib/schemas/upload";
import { route } from "@/lib/server/route";
import { importLog } from "@/lib/services/import-log";

const MOST_BYTES = 60 * 1024 * 1024;

/** Takes one log file of a job's house. */
export const POST = route({
  name: "import log",
  permission: "log.upload",
  schema: z.object({ jobId: z.uuid() }),
  run: async (scope, { jobId }, request) => {
    const { file, form } = await readUpload(request, "file", MOST_BYTES);
    const sourceName = String(form.get("sourceName") ?? "").trim();
    if (sourceName === "" || sourceName.length > 80) {
      throw invalidInput([
        {
          field: "sourceName",
          message: "Name the logger in at most 80 characters, for instance “hall sensor”.",
        },
      ]);
    }
    const mapping = form.get("mapping");
    return importLog(scope, {
      jobId,
      fileName: file.name.slice(-120),
      bytes: new Uint8Array(await file.arrayBuffer()),
      sourceName,
      mapping:
        typeof mapping === "string" && mapping !== "" ? logMappingSchema.parse(JSON.parse(mapping)) : null,
    });
  },
});

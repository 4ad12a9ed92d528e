import { z } from "zod";
import { weatherUploadSchema } from "@/lib/schemas/weather";
import { route } from "@/lib/server/route";
import { refuseUnstorableText } from "@/lib/server/storable-text";
import { readUpload } from "@/lib/server/upload";
import { addWeatherFile } from "@/lib/services/weather";

const MOST_BYTES = 10 * 1024 * 1024;

/** Takes one EPW weather year for the company's list. */
export const POST = route({
  name: "add weather file",
  permission: "design.edit",
  schema: z.object({}),
  run: async (scope, _nothing, request) => {
    const { file, form } = await readUpload(request, "file", MOST_BYTES, "Choose the .epw file of one year.");
    const words = weatherUploadSchema.parse({
      name: String(form.get("name") ?? ""),
      sourceNote: String(form.get("sourceNote") ?? ""),
    });
    refuseUnstorableText(words);
    const bytes = new Uint8Array(await file.arrayBuffer());
    return { weatherFileId: await addWeatherFile(scope, { ...words, bytes }) };
  },
});

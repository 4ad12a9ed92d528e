import { z } from "zod";
import { readOriginal } from "@/app/api/photo-of-request";
import { NO_ORIGINAL } from "@/lib/schemas/field";
import { route } from "@/lib/server/route";
import { addOriginal, sayNoOriginal } from "@/lib/services/photo-originals";

const ids = z.object({ jobId: z.uuid(), photoId: z.uuid() });

/** Takes the camera's own picture, which the office asked for, as the body of the request. Safe to repeat. */
export const PUT = route({
  name: "add original photo",
  permission: "attachment.add",
  forDevice: true,
  schema: ids,
  run: async (scope, named, request) => addOriginal(scope, { ...named, ...(await readOriginal(request)) }),
});

/** Hears that the phone cannot send it. Safe to repeat. */
export const DELETE = route({
  name: "say no original photo",
  permission: "attachment.add",
  forDevice: true,
  schema: ids.extend({ why: z.enum(NO_ORIGINAL) }),
  run: async (scope, named) => {
    await sayNoOriginal(scope, named);
    return { told: true };
  },
});

import { z } from "zod";
import { readPhoto } from "@/app/api/photo-of-request";
import { route } from "@/lib/server/route";
import { handOverPhoto } from "@/lib/services/hand-over";

/** Takes an unsent picture of somebody who may not see the job any more. Safe to repeat; gives nothing back. */
export const PUT = route({
  name: "hand over photo",
  permission: "startup.fill",
  forDevice: "also who left",
  schema: z.object({ jobId: z.uuid(), photoId: z.uuid() }),
  run: async (scope, { jobId, photoId }, request) =>
    handOverPhoto(scope, { jobId, id: photoId, read: () => readPhoto(request) }),
});

import { z } from "zod";
import { readPhoto } from "@/app/api/photo-of-request";
import { PHOTO_SIZES } from "@/lib/schemas/field";
import { route } from "@/lib/server/route";
import { addFile, readFile, removeFile } from "@/lib/services/attachments";

const ids = z.object({ jobId: z.uuid(), photoId: z.uuid() });

/** Takes a picture as the body of the request. Safe to repeat. */
export const PUT = route({
  name: "add photo",
  permission: "attachment.add",
  forDevice: true,
  schema: ids,
  run: async (scope, { jobId, photoId }, request) => {
    const photo = { jobId, id: photoId, kind: "photo", stage: "startup_record", fileName: "photo" } as const;
    return addFile(scope, { ...photo, ...(await readPhoto(request)) });
  },
});

/** A picture: small, for the screen, or the bytes as they came. A picture never changes under its address. */
export const GET = route({
  name: "read photo",
  permission: "job.read",
  schema: ids.extend({ size: z.enum(PHOTO_SIZES).default("full") }),
  run: async (scope, { jobId, photoId, size }) => {
    const { bytes, mime, fileName } = await readFile(scope, jobId, photoId, size);
    const extension = mime.split("/")[1] ?? "bin";
    return new Response(Buffer.from(bytes), {
      headers: {
        "content-type": mime,
        "content-length": String(bytes.byteLength),
        "content-disposition": `${size === "original" || size === "camera" ? "attachment" : "inline"}; filename="${fileName}.${extension}"`,
        "cache-control": "private, max-age=3600",
        vary: "cookie",
      },
    });
  },
});

/** Takes a picture out of sight. Safe to repeat. */
export const DELETE = route({
  name: "remove photo",
  permission: "attachment.add",
  schema: ids,
  run: async (scope, { jobId, photoId }) => {
    await removeFile(scope, jobId, photoId);
    return { removed: true };
  },
});

import { MOST_PHOTO_BYTES } from "@/lib/domain/file-limits";
import { originalDetailsSchema, type PhotoDetails, photoDetailsSchema } from "@/lib/schemas/field";
import { readBodyUpTo } from "@/lib/server/limited-body";
import { refuseUnstorableText } from "@/lib/server/storable-text";

const TOO_LARGE = { field: "photo", message: "This picture is larger than 20 MB. Send a smaller one." };

/** The bytes of a picture that is the body of a request, with what its address says about it. */
export async function readPhoto(
  request: Request,
): Promise<{ readonly bytes: Uint8Array; readonly details: PhotoDetails }> {
  // Before the body is read: a wrong address need not send 20 MB first.
  const details = photoDetailsSchema.parse(queryOf(request));
  return { bytes: await readBodyUpTo(request, MOST_PHOTO_BYTES, TOO_LARGE), details };
}

/** The same of an original. */
export async function readOriginal(
  request: Request,
): Promise<{ readonly bytes: Uint8Array; readonly sha256: string }> {
  const { sha256 } = originalDetailsSchema.parse(queryOf(request));
  return { bytes: await readBodyUpTo(request, MOST_PHOTO_BYTES, TOO_LARGE), sha256 };
}

function queryOf(request: Request): Record<string, string> {
  const query = Object.fromEntries(new URL(request.url).searchParams);
  refuseUnstorableText(query);
  return query;
}

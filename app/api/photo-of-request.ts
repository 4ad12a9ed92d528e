import { type PhotoDetails, photoDetailsSchema } from "@/lib/schemas/field";
import { readBodyUpTo } from "@/lib/server/limited-body";
import { refuseUnstorableText } from "@/lib/server/storable-text";

const MOST_BYTES = 20 * 1024 * 1024;
const TOO_LARGE = { field: "photo", message: "This picture is larger than 20 MB. Send a smaller one." };

/** The bytes of a picture that is the body of a request, with what its address says about it. */
export async function readPhoto(
  request: Request,
): Promise<{ readonly bytes: Uint8Array; readonly details: PhotoDetails }> {
  // Before the body is read: a wrong address need not send 20 MB first.
  const query = Object.fromEntries(new URL(request.url).searchParams);
  refuseUnstorableText(query);
  const details = photoDetailsSchema.parse(query);
  return { bytes: await readBodyUpTo(request, MOST_BYTES, TOO_LARGE), details };
}

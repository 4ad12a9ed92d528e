import type { Phone } from "./phone";
import { HEIC, shrinkPhoto, whereNow } from "./shrink-photo";

export type Picture = {
  readonly jobId: string;
  /** The field the picture proves; `null` for the job as a whole. */
  readonly field: string | null;
  readonly caption: string;
  readonly file: File | Blob;
};

const TOOLS = { shrink: shrinkPhoto, where: whereNow, now: () => new Date(), onKept: () => {} };

/**
 * Makes the camera's picture small and keeps it at once, with the camera's own beside it. The place is added when the phone
 * has found it out: in an attic that takes seconds, in which a pocketed phone must not lose the picture.
 *
 * @throws Error in words for the person when there is no picture to keep.
 */
export async function takePicture(
  phone: Pick<Phone, "keepPhoto" | "placePhoto" | "send">,
  { file, ...facts }: Picture,
  given: Partial<typeof TOOLS> = {},
): Promise<void> {
  const tools = { ...TOOLS, ...given };
  const takenAt = tools.now().toISOString();
  const where = tools.where();
  const small = await tools.shrink(file);
  // A HEIC picture that stayed as it was is its own original.
  const camera = small.type === HEIC ? null : file;
  const nowhere = { latitude: null, longitude: null };
  const id = await phone.keepPhoto({ ...facts, ...small, ...nowhere, takenAt }, camera);
  tools.onKept();
  const place = await where;
  if (place !== null) await phone.placePhoto(id, place);
  await phone.send();
}

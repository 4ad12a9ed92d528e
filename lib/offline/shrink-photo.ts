import { MOST_PHOTO_BYTES } from "@/lib/domain/file-limits";
import { STILL_MS } from "./contact";

/** Enough to read a nameplate; a tenth of what a phone's camera writes. */
const LONGEST_SIDE_PX = 1_600;
const QUALITY = 0.8;

export type SmallPhoto = { readonly bytes: Blob; readonly type: string };

/**
 * Makes a camera's picture small enough to be sent from an attic. The camera's own notes, place included, do not
 * survive the drawing; what is wanted of them is kept beside the picture. A HEIC picture that this browser cannot draw
 * stays as the camera gave it: the evidence counts more than its size.
 *
 * @throws Error when this is no picture that the browser can draw.
 */
export async function shrinkPhoto(file: Blob): Promise<SmallPhoto> {
  const picture = await createImageBitmap(file, { imageOrientation: "from-image" }).catch(() => null);
  if (picture === null) {
    const head = new Uint8Array(await file.slice(0, 16).arrayBuffer());
    // A copy: what the camera's file names may be gone when it is sent.
    if (isHeic(head) && file.size <= MOST_PHOTO_BYTES)
      return { bytes: new Blob([await file.arrayBuffer()], { type: HEIC }), type: HEIC };
    throw new Error("This is not a picture that the phone can read. Take it again.");
  }
  try {
    const scale = Math.min(1, LONGEST_SIDE_PX / Math.max(picture.width, picture.height));
    const canvas = document.createElement("canvas");
    canvas.width = Math.max(1, Math.round(picture.width * scale));
    canvas.height = Math.max(1, Math.round(picture.height * scale));
    const paper = canvas.getContext("2d");
    if (!paper)
      throw new Error("The phone has no memory left for this picture. Close other pages, then try again.");
    paper.drawImage(picture, 0, 0, canvas.width, canvas.height);
    const small = await new Promise<Blob | null>((done) => canvas.toBlob(done, "image/jpeg", QUALITY));
    if (!small) throw new Error("The phone could not keep this picture. Take it again.");
    return { bytes: small, type: small.type };
  } finally {
    picture.close();
  }
}

/** What a browser may not be able to show. */
export const HEIC = "image/heic";

const HEIC_BRANDS = ["heic", "heix"];

/** Told by content (ISO/IEC 14496-12: the box "ftyp", then its brand), as the office tells it. */
export function isHeic(bytes: Uint8Array): boolean {
  const text = String.fromCharCode(...bytes.subarray(4, 12));
  return text.startsWith("ftyp") && HEIC_BRANDS.includes(text.slice(4));
}

/** Shorter than the pause after which a picture is sent: it takes its place along. */
const PLACE_WAIT_MS = STILL_MS - 1_000;

/** Where the phone is, when the person allows it and the phone finds out soon enough. */
export function whereNow(): Promise<{ readonly latitude: number; readonly longitude: number } | null> {
  if (!("geolocation" in navigator)) return Promise.resolve(null);
  return new Promise((done) => {
    navigator.geolocation.getCurrentPosition(
      ({ coords }) => done({ latitude: coords.latitude, longitude: coords.longitude }),
      () => done(null),
      { timeout: PLACE_WAIT_MS, maximumAge: 600_000 },
    );
    // Some phones wait for an answer to their own question before the clock above starts.
    setTimeout(() => done(null), PLACE_WAIT_MS + 500);
  });
}

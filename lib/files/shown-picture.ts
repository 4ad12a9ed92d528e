import sharp from "sharp";
import { refused } from "./sniff";

/** A 20 MB file can unpack into gigabytes; no phone's camera takes more. */
const MAX_INPUT_PIXELS = 120_000_000;
const FULL_SIDE = 2_048;
const SMALL_SIDE = 480;

export type ShownPicture = {
  readonly full: Uint8Array;
  readonly small: Uint8Array;
  /** Of the upright picture. */
  readonly widthPx: number;
  readonly heightPx: number;
};

/**
 * What is shown of an uploaded picture: upright, drawn anew, so that neither place nor time nor anything else
 * of the file is passed on.
 *
 * @returns `null` for HEIC, which is kept as it came but cannot be drawn here.
 * @throws AppError `UNSUPPORTED_FILE` when the picture is damaged.
 */
export async function shownPicture(bytes: Uint8Array, mime: string): Promise<ShownPicture | null> {
  if (mime === "image/heic") return null;
  try {
    const upright = sharp(bytes, {
      limitInputPixels: MAX_INPUT_PIXELS,
      failOn: "error",
      pages: 1,
    }).autoOrient();
    const full = await upright
      .clone()
      .resize({ width: FULL_SIDE, height: FULL_SIDE, fit: "inside", withoutEnlargement: true })
      .flatten({ background: "#ffffff" })
      .toColourspace("srgb")
      .jpeg({ quality: 82 })
      .timeout({ seconds: 20 })
      .toBuffer();
    // From the drawn picture, so that the large one is unpacked once.
    const small = await sharp(full)
      .resize({ width: SMALL_SIDE, height: SMALL_SIDE, fit: "inside", withoutEnlargement: true })
      .jpeg({ quality: 70 })
      .toBuffer();
    const { autoOrient } = await upright.metadata();
    return { full, small, widthPx: autoOrient.width, heightPx: autoOrient.height };
  } catch (cause) {
    const error = refused(
      "UNSUPPORTED_FILE",
      "photo",
      "This picture is damaged. Take it again or send another.",
    );
    error.cause = cause;
    throw error;
  }
}

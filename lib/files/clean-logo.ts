import { fileTypeFromBuffer } from "file-type";
import sharp, { type Sharp } from "sharp";
import { refused } from "./sniff";
import { isSvg, problemOfSvg } from "./svg-safety";

const FIELD = "logo";
const MAX_INPUT_BYTES = 2 * 1024 * 1024;
/** A 2 MB file can unpack into gigabytes; this is a large poster. */
const MAX_INPUT_PIXELS = 40_000_000;
const MAX_WIDTH = 1_200;
const MAX_HEIGHT = 600;
const MIN_SIDE = 16;
const RASTER = ["image/png", "image/jpeg", "image/webp"];
const FIX = "Send a PNG, JPEG, WebP or plain SVG of at most 2 MB.";

/**
 * Turns an uploaded logo into a plain PNG of at most 1200 × 600 pixels: one frame, upright, without
 * metadata, drawn anew so that nothing of the uploaded file is passed on.
 *
 * @throws AppError `TOO_LARGE` or `UNSUPPORTED_FILE`, naming the field `logo` and what to send instead.
 */
export async function cleanLogo(bytes: Uint8Array): Promise<Uint8Array> {
  if (bytes.byteLength > MAX_INPUT_BYTES) {
    throw refused("TOO_LARGE", FIELD, `This logo is larger than 2 MB. ${FIX}`);
  }
  const image = isSvg(bytes) ? await openSvg(bytes) : await openRaster(bytes);
  const png = await drawn(image);
  await requireVisible(png);
  return png;
}

async function openRaster(bytes: Uint8Array): Promise<Sharp> {
  const found = await fileTypeFromBuffer(bytes);
  if (!found || !RASTER.includes(found.mime)) {
    throw refused("UNSUPPORTED_FILE", FIELD, `This file is not a picture that can be used as a logo. ${FIX}`);
  }
  return open(bytes, 72);
}

async function openSvg(bytes: Uint8Array): Promise<Sharp> {
  const problem = problemOfSvg(bytes);
  if (problem !== null) {
    throw refused("UNSUPPORTED_FILE", FIELD, `This SVG cannot be used: ${problem}. ${FIX}`);
  }
  const { width, height } = await measured(open(bytes, 72));
  // Drawn at the size it will be kept at: a small symbol stays sharp, a huge one is never drawn huge.
  const density = 72 * Math.min(MAX_WIDTH / width, MAX_HEIGHT / height);
  return open(bytes, Math.min(Math.max(density, 1), 100_000));
}

function open(bytes: Uint8Array, density: number): Sharp {
  return sharp(bytes, { density, limitInputPixels: MAX_INPUT_PIXELS, failOn: "error", pages: 1 });
}

async function drawn(image: Sharp): Promise<Uint8Array> {
  await measured(image);
  return await image
    .autoOrient()
    .resize({ width: MAX_WIDTH, height: MAX_HEIGHT, fit: "inside", withoutEnlargement: true })
    .toColourspace("srgb")
    .png({ compressionLevel: 9 })
    .timeout({ seconds: 10 })
    .toBuffer()
    .catch((cause: unknown) => {
      throw unreadable(cause);
    });
}

async function measured(image: Sharp): Promise<{ readonly width: number; readonly height: number }> {
  const { width, height } = await image.metadata().catch((cause: unknown) => {
    throw unreadable(cause);
  });
  if (width * height > MAX_INPUT_PIXELS) throw unreadable(null);
  if (width < MIN_SIDE && height < MIN_SIDE) {
    throw refused(
      "UNSUPPORTED_FILE",
      FIELD,
      "This logo is too small to print. Send one at least 300 pixels wide.",
    );
  }
  return { width, height };
}

/** A white logo made for dark backgrounds would leave an empty place on paper. */
async function requireVisible(png: Uint8Array): Promise<void> {
  const { channels } = await sharp(png).flatten({ background: "#ffffff" }).stats();
  if (channels.every((channel) => channel.min > 235)) {
    throw refused(
      "UNSUPPORTED_FILE",
      FIELD,
      "This logo is white or empty and would not show on paper. Send the version for light backgrounds.",
    );
  }
}

function unreadable(cause: unknown): Error {
  const error = refused(
    "UNSUPPORTED_FILE",
    FIELD,
    `This picture is damaged or has too many pixels. ${FIX} Its sides may have at most 6,000 pixels.`,
  );
  error.cause = cause;
  return error;
}

import { fileTypeFromBuffer } from "file-type";
import { AppError } from "@/lib/errors";
import { FILE_KINDS, type FileKind } from "./kinds";

/**
 * The type of a file by its content; its name and what the browser says about it are not asked.
 *
 * @throws AppError `TOO_LARGE` or `UNSUPPORTED_FILE`, naming the field and what to send instead.
 */
export async function sniffAllowed(bytes: Uint8Array, kind: FileKind, field: string): Promise<string> {
  const { mimes, maxBytes, fix } = FILE_KINDS[kind];
  if (bytes.byteLength > maxBytes) throw refused("TOO_LARGE", field, `This file is too large. ${fix}`);
  const mime = await sniff(bytes);
  if (mime === null || !mimes.includes(mime)) {
    throw refused("UNSUPPORTED_FILE", field, `This kind of file cannot be used here. ${fix}`);
  }
  return mime;
}

async function sniff(bytes: Uint8Array): Promise<string | null> {
  // First: the byte order mark FF FE, which a spreadsheet writes, also begins some sound files.
  if (isUtf16(bytes)) return "text/csv";
  const found = await fileTypeFromBuffer(bytes);
  if (found) return found.mime;
  return looksLikeText(bytes) ? "text/csv" : null;
}

/** What a file's name ends with, by its content: `.pdf`; `.csv` for text. */
export async function endingOf(bytes: Uint8Array): Promise<string> {
  const found = isUtf16(bytes) ? undefined : await fileTypeFromBuffer(bytes);
  return found ? `.${found.ext}` : ".csv";
}

function isUtf16(bytes: Uint8Array): boolean {
  return (bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff);
}

/** Text carries no signature, so it is told by what it lacks: control bytes. */
function looksLikeText(bytes: Uint8Array): boolean {
  return (
    bytes.byteLength > 0 &&
    bytes.every((byte) => byte >= 0x20 || byte === 0x09 || byte === 0x0a || byte === 0x0d)
  );
}

/** An error about one file field. */
export function refused(code: "TOO_LARGE" | "UNSUPPORTED_FILE", field: string, message: string): AppError {
  return new AppError(code, message, { fields: [{ field, message }] });
}

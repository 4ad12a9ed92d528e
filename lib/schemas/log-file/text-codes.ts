/*
 * A file's text is its bytes in UTF-8, never one string: of the largest file that would be a second and a third copy, and a loop over
 * bytes takes half the time of one that asks a string for each character. Only bytes below 128 are characters by themselves.
 */

const decoder = new TextDecoder("utf-8", { ignoreBOM: true });
/** A step of the check below, so that no copy of the whole is made. */
const STEP = 1 << 20;

/** A part of a text in UTF-8. */
export function partOf(text: Uint8Array, from: number, to: number): string {
  return decoder.decode(text.subarray(from, to));
}

/** Whether bytes are UTF-8. */
export function isUtf8(bytes: Uint8Array): boolean {
  const strict = new TextDecoder("utf-8", { fatal: true });
  try {
    for (let from = 0; from < bytes.length; from += STEP)
      strict.decode(bytes.subarray(from, from + STEP), { stream: true });
    strict.decode();
    return true;
  } catch {
    return false;
  }
}

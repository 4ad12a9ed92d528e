const NO_ASCII = 255;

/**
 * A text's characters as bytes, one each, 255 for any that is not ASCII: a loop over bytes takes half the time of one that asks
 * the text for each character.
 */
export function codesOf(text: string): Uint8Array {
  const codes = new Uint8Array(text.length);
  const { read, written } = new TextEncoder().encodeInto(text, codes);
  if (read === text.length && written === text.length) return codes;
  for (let at = 0; at < text.length; at++) codes[at] = Math.min(text.charCodeAt(at), NO_ASCII);
  return codes;
}

import { unfoldsTooFar } from "./svg-repeats";
import { beginsWithSvg, tagsOf } from "./svg-tags";

/**
 * Why an SVG picture is refused before anything draws it, or `null` when it is harmless.
 *
 * A logo needs shapes, text and colours. Whatever could run, load from elsewhere, or grow without end is
 * refused, not repaired: the person exports a plain SVG or a PNG.
 */
export function problemOfSvg(bytes: Uint8Array): string | null {
  const text = asUtf8(bytes);
  if (text === null) return "it is not UTF-8 text";
  for (const [pattern, problem] of FORBIDDEN) {
    if (pattern.test(text)) return problem;
  }
  for (const [, code = ""] of text.matchAll(/&#(x[0-9a-f]+|\d+);/gi)) {
    if (hidesPlainLetter(Number(code.replace(/^x/i, "0x")))) return "it spells plain letters as codes";
  }
  for (const [, , value = ""] of text.matchAll(REFERENCE)) {
    if (!isInside(value)) return "it refers to something outside the picture";
  }
  if (holdsEscapedStyle(text)) return "its styles hold escapes";
  const tags = tagsOf(text);
  if (tags === null) return "it is damaged: a part of it does not end";
  return unfoldsTooFar(tags) ? "it repeats its parts too often, or within themselves" : null;
}

/** True when the bytes are meant as SVG: the first element is `svg`, with or without a prolog. */
export function isSvg(bytes: Uint8Array): boolean {
  return beginsWithSvg(new TextDecoder("utf-8").decode(bytes.subarray(0, 4_096)));
}

/** Every `href`, with or without a namespace prefix. */
const REFERENCE = /[\s:]href\s*=\s*(["'])([\s\S]*?)\1/gi;

/** A part of the same picture, or a raster picture carried in the file itself. */
function isInside(value: string): boolean {
  return (
    /^\s*#[^\s&]*\s*$/.test(value) || /^data:image\/(?:png|jpeg|webp);base64,[a-z0-9+/=\s]*$/i.test(value)
  );
}

/** A letter spelled as a code could hide a word from the patterns below; quotes, & and < have to be spelled so. */
function hidesPlainLetter(codePoint: number): boolean {
  return codePoint > 0x20 && codePoint < 0x7f && ![0x22, 0x26, 0x27, 0x3c, 0x3e].includes(codePoint);
}

/** A backslash lets style text spell url( or @import in a way the patterns below do not see. */
function holdsEscapedStyle(text: string): boolean {
  const sheet = text.search(/<style/i);
  if (sheet !== -1 && text.includes("\\", sheet)) return true;
  return [...text.matchAll(/style\s*=\s*("[^"]*"|'[^']*')/gi)].some(([, value]) => value?.includes("\\"));
}

const element = (names: string) => new RegExp(`<\\s*(?:[\\w.-]+:)?(?:${names})[\\s>/]`, "i");

const FORBIDDEN: readonly (readonly [RegExp, string])[] = [
  [/<!(?:DOCTYPE|ENTITY|ELEMENT|ATTLIST|NOTATION)/i, "it declares a document type or entities"],
  [/<\?(?!xml\s)/i, "it holds processing instructions"],
  [/encoding\s*=\s*["'](?!utf-?8["'])/i, "it is not UTF-8 text"],
  [element("script|handler|listener|set|animate\\w*"), "it holds a script or an animation"],
  [element("foreignObject|iframe|embed|object|audio|video|link"), "it holds something other than drawing"],
  [element("include|feImage"), "it refers to something outside the picture"],
  [/[\s"'/]on[a-z]+\s*=/i, "it holds event handlers"],
  [/javascript\s*:/i, "it holds a script or an animation"],
  [/@import|@font-face/i, "its styles load from elsewhere"],
  [/url\s*\(\s*(?!["']?#)/i, "its styles load from elsewhere"],
];

function asUtf8(bytes: Uint8Array): string | null {
  try {
    const text = new TextDecoder("utf-8", { fatal: true }).decode(bytes);
    return text.includes("\0") ? null : text;
  } catch {
    return null;
  }
}

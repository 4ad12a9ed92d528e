import { join } from "node:path";
import { Font } from "@react-pdf/renderer";

export const FAMILY = "Noto Sans";
export const REGULAR = 400;
export const STRONG = 600;

// Found from the project's root, because a bundler moves this file but not the fonts beside it.
const FOLDER = join(process.cwd(), "lib", "reports", "fonts");

Font.register({
  family: FAMILY,
  fonts: [
    { src: join(FOLDER, "NotoSans-Regular.ttf"), fontWeight: REGULAR },
    { src: join(FOLDER, "NotoSans-SemiBold.ttf"), fontWeight: STRONG },
  ],
});

const LONGEST_WHOLE_WORD = 26;

// Words stay whole; only what no line could hold, such as a pasted address, is cut.
Font.registerHyphenationCallback((word) => cutLongWord(word, LONGEST_WHOLE_WORD));

/** The pieces at whose ends a word may be broken: none for a word of ordinary length. */
export function cutLongWord(word: string, longest: number): string[] {
  const characters = [...word];
  if (characters.length <= longest) return [word];
  const pieces: string[] = [];
  for (let start = 0; start < characters.length; start += PIECE) {
    pieces.push(characters.slice(start, start + PIECE).join(""));
  }
  return pieces;
}

const PIECE = 4;

/** Loads the fonts and tells which characters they can print. */
export function loadFonts(): Promise<(codePoint: number) => boolean> {
  loaded ??= load();
  return loaded;
}

let loaded: Promise<(codePoint: number) => boolean> | null = null;

async function load(): Promise<(codePoint: number) => boolean> {
  const weights = [REGULAR, STRONG];
  await Promise.all(weights.map((fontWeight) => Font.load({ fontFamily: FAMILY, fontWeight })));
  const fonts = weights
    .map((fontWeight) => Font.getFont({ fontFamily: FAMILY, fontWeight }).data)
    .filter((font) => font !== null);
  if (fonts.length !== weights.length) throw new Error("The fonts of the packets could not be read.");
  for (const font of fonts) {
    // A font remembers for each shape the letter that asked for it first, and `í` asks for the shape of `ı` in
    // no letter's name. Asked for by their letters now, shapes stay right, and bytes do not depend on history.
    for (const codePoint of font.characterSet.toSorted(byCodePoint)) font.glyphForCodePoint(codePoint);
  }
  return (codePoint) =>
    fonts.every((font) => font.hasGlyphForCodePoint(codePoint)) &&
    !NEEDS_SHAPING.test(String.fromCodePoint(codePoint));
}

/** The font has its letters, but they change shape and place with their neighbours. */
const NEEDS_SHAPING = /\p{Script=Devanagari}/u;

const byCodePoint = (a: number, b: number) => a - b;

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
    rememberShapes(font as unknown as Shaper);
  }
  return (codePoint) =>
    fonts.every((font) => font.hasGlyphForCodePoint(codePoint)) &&
    !NEEDS_SHAPING.test(String.fromCodePoint(codePoint));
}

/** The font has its letters, but they change shape and place with their neighbours. */
const NEEDS_SHAPING = /\p{Script=Devanagari}/u;

const byCodePoint = (a: number, b: number) => a - b;

type Shaper = { layout: (text: unknown, ...how: readonly unknown[]) => unknown };

/** Texts kept at once: those of a long packet, some megabytes. */
const MOST_SHAPED = 3_000;

/**
 * The library shapes a text anew each time it looks where its lines break, five times for most; here it is done once.
 * What is answered is only read: positions are copied, glyphs sliced.
 */
function rememberShapes(font: Shaper): void {
  const shape = font.layout.bind(font);
  const known = new Map<string, unknown>();
  font.layout = (text, ...how) => {
    if (typeof text !== "string") return shape(text, ...how);
    const key = JSON.stringify([text, how]);
    const found = known.get(key) ?? shape(text, ...how);
    if (known.size >= MOST_SHAPED) known.clear();
    known.set(key, found);
    return found;
  };
}

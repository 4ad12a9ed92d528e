import { loadFonts } from "./fonts";
import { mapTexts, printable } from "./printable";

/** Texts that may have paragraphs. Any other text is one paragraph, whatever line ends were typed into it. */
const IN_PARAGRAPHS: ReadonlySet<string> = new Set(["words", "coverWords", "closingWords", "termsWords"]);

/** A view whose texts the fonts can print; the rest of it unchanged. */
export async function clean<T>(view: T): Promise<T> {
  const canPrint = await loadFonts();
  return mapTexts(view, (text, name) => {
    const cleaned = printable(text, canPrint);
    // A line end inside one text would make the library reach for a font that is not embedded.
    return IN_PARAGRAPHS.has(name) ? cleaned : cleaned.replaceAll(/\s*\n\s*/g, " ");
  });
}

import { renderToBuffer } from "@react-pdf/renderer";
import { loadFonts } from "./fonts";
import { HomeownerDocument } from "./homeowner/document";
import type { HomeownerPacketView } from "./homeowner/view";
import { mapTexts, printable } from "./printable";

/** Texts that may have paragraphs. Any other text is one paragraph, whatever line ends were typed into it. */
const IN_PARAGRAPHS: ReadonlySet<string> = new Set(["words", "coverWords", "closingWords"]);

/**
 * The homeowner packet as PDF bytes. The same view gives the same bytes.
 *
 * @param view - Everything to print, finished: this computes nothing.
 */
export async function renderHomeownerPacket(view: HomeownerPacketView): Promise<Uint8Array> {
  const canPrint = await loadFonts();
  const cleaned = mapTexts(view, (text, name) => {
    const clean = printable(text, canPrint);
    // A line end inside one text would make the library reach for a font that is not embedded.
    return IN_PARAGRAPHS.has(name) ? clean : clean.replaceAll(/\s*\n\s*/g, " ");
  });
  return new Uint8Array(await renderToBuffer(<HomeownerDocument view={cleaned} />));
}

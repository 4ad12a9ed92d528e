import { getDocument, OPS } from "pdfjs-dist/legacy/build/pdf.mjs";
import { expect, test } from "vitest";
import { renderView } from "@/lib/reports/render-view";
import { crewPacketView } from "@/lib/services/packet-views/crew";
import { PLAIN_BRAND, packetPartsOf } from "../support/packet-parts";

/** WCAG 2.2, 1.4.3: contrast of text (published). A printer without colour keeps lightness alone, which is what it is made of. */
const LEAST_CONTRAST = 4.5;

/** Lightness of a colour as a printer without colour sees it: its relative luminance (WCAG 2.2, definition). */
function luminance(hex: string): number {
  const linear = [1, 3, 5].map((at) => {
    const share = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * (linear[0] ?? 0) + 0.7152 * (linear[1] ?? 0) + 0.0722 * (linear[2] ?? 0);
}

/** The colours in which a file's texts are filled. */
async function textColours(bytes: Uint8Array): Promise<ReadonlySet<string>> {
  const task = getDocument({ data: bytes.slice(), useSystemFonts: false, verbosity: 0 });
  const pdf = await task.promise;
  const colours = new Set<string>();
  for (let number = 1; number <= pdf.numPages; number += 1) {
    const { fnArray, argsArray } = await (await pdf.getPage(number)).getOperatorList();
    let fill = "#000000";
    const kept: string[] = [];
    for (const [at, operator] of fnArray.entries()) {
      if (operator === OPS.save) kept.push(fill);
      else if (operator === OPS.restore) fill = kept.pop() ?? "#000000";
      else if (operator === OPS.setFillRGBColor) fill = String(argsArray[at][0]);
      else if (operator === OPS.showText) colours.add(fill);
    }
  }
  await task.destroy();
  return colours;
}

test.each(["#0f4c5c", "#ffb703", "#ffffff", "#d5f5e3"])(
  "the crew’s sheet in the colour %s is read when printed in black and white",
  async (accentHex) => {
    const parts = packetPartsOf({ brand: { ...PLAIN_BRAND, accentHex } });
    const colours = await textColours(await renderView(crewPacketView(parts)));
    expect(colours.size).toBeGreaterThan(1);
    for (const colour of colours) {
      expect(colour).toMatch(/^#[0-9a-f]{6}$/);
      expect(1.05 / (luminance(colour) + 0.05), colour).toBeGreaterThanOrEqual(LEAST_CONTRAST);
    }
  },
);

test("it has a line to write on for each reading, at full capacity and in the first stage", () => {
  const blanks = crewPacketView(packetPartsOf())
    .sections.flatMap(({ blocks }) => blocks)
    .find(({ kind }) => kind === "blanks");
  expect(blanks?.kind === "blanks" && [blanks.heads, blanks.labels.length]).toEqual([
    ["Full capacity", "First stage"],
    15,
  ]);
});

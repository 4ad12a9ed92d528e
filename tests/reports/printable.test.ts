import fc from "fast-check";
import { expect, test } from "vitest";
import { loadFonts } from "@/lib/reports/fonts";
import { mapTexts, printable } from "@/lib/reports/printable";

test("whatever is typed becomes text the font can print, on lines, and cleaning again changes nothing", async () => {
  const canPrint = await loadFonts();
  fc.assert(
    fc.property(fc.string({ unit: "binary", maxLength: 60 }), (text) => {
      const clean = printable(text, canPrint);
      for (const character of clean) {
        expect(character === "\n" || canPrint(character.codePointAt(0) ?? 0)).toBe(true);
      }
      expect(clean).not.toMatch(/(?!\n)[\p{Cc}\p{Cf}\p{Cs}]/u);
      expect(printable(clean, canPrint)).toBe(clean);
    }),
    { seed: 20261125, numRuns: 2_000 },
  );
});

test("a number stays with its sign and unit; nothing else is tied together", async () => {
  const canPrint = await loadFonts();
  expect(printable("742 ± 37 cfm, 55 % and 8 min, 3 houses", canPrint)).toBe(
    "742 ±\u00a037\u00a0cfm, 55\u00a0% and 8\u00a0min, 3 houses",
  );
});

test("texts inside plain data are changed, bytes and numbers are not", () => {
  const bytes = new Uint8Array([1, 2]);
  const data = { a: "x", b: [{ c: "y", d: 1, e: null, f: true }], bytes };
  expect(mapTexts(data, (text, name) => `${name} ${text}!`)).toEqual({
    a: "a x!",
    b: [{ c: "c y!", d: 1, e: null, f: true }],
    bytes,
  });
});

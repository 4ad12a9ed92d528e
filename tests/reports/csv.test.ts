import { parse } from "csv-parse/sync";
import fc from "fast-check";
import { expect, test } from "vitest";
import { csvText } from "@/lib/reports/csv";

test("a text that a spreadsheet would run is led by an apostrophe; a negative number is not", () => {
  const text = csvText(
    ["Customer", "Correction °F"],
    [
      ["=HYPERLINK(1)", -1.5],
      ["+1", 2],
      ["-2+3", null],
      ["@sum", 0],
      ["\tx", 1],
    ],
  );
  expect(text.charCodeAt(0)).toBe(0xfeff);
  const rows = parse(text, { bom: true }) as string[][];
  expect(rows[0]).toEqual(["Customer", "Correction °F"]);
  expect(rows.slice(1).map((row) => row[0])).toEqual(["'=HYPERLINK(1)", "'+1", "'-2+3", "'@sum", "'\tx"]);
  expect(rows.slice(1).map((row) => row[1])).toEqual(["-1.5", "2", "", "0", "1"]);
});

test("every text comes back whole, and none begins as a formula does", () => {
  fc.assert(
    fc.property(fc.array(fc.tuple(fc.string(), fc.boolean()), { minLength: 1 }), (cells) => {
      const rows = parse(csvText(["text", "flag"], cells), {
        bom: true,
        skip_empty_lines: false,
      }) as string[][];
      for (const [index, [text, flag]] of cells.entries()) {
        const [shown, word] = rows[index + 1] ?? [];
        expect(shown?.replace(/^'(?=[=+\-@\t\r＝＋－＠])/, "")).toBe(text);
        expect(shown).not.toMatch(/^[=+\-@\t\r]/);
        expect(word).toBe(flag ? "yes" : "no");
      }
    }),
    { seed: 7 },
  );
});

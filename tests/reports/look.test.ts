import { expect, test } from "vitest";
import { contrastRatio } from "@/lib/charts/accent-contrast";
import { accentOnPaper, INK, QUIET } from "@/lib/reports/look";
import { VERDICT_COLORS } from "@/lib/reports/parts/verdict-mark";

/** WCAG 2.2, 1.4.3: 4.5 to 1 for text [published]. */
const TEXT = 4.5;

test.each(["#ffb703", "#ffffff", "#ffff00", "#0f4c5c", "#000", "#39ff14"])(
  "the accent %s can be read on white",
  (hex) => {
    expect(contrastRatio(accentOnPaper(hex), "#ffffff")).toBeGreaterThanOrEqual(TEXT);
  },
);

test("an accent that is dark enough is kept as it is; one that is no colour becomes ink", () => {
  expect(accentOnPaper("#0f4c5c")).toBe("#0f4c5c");
  expect(accentOnPaper("")).toBe(INK);
  expect(accentOnPaper("url(x)")).toBe(INK);
});

test("text and verdicts can be read on white, also when a printer makes them grey", () => {
  for (const color of [INK, QUIET, ...Object.values(VERDICT_COLORS)]) {
    expect(contrastRatio(color, "#ffffff")).toBeGreaterThanOrEqual(TEXT);
  }
});

import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { accentContrast, contrastRatio } from "@/lib/charts/accent-contrast";
import { TONES } from "@/lib/charts/geometry";
import { PAPER_PALETTE } from "@/lib/charts/palette";

const css = readFileSync(new URL("../../app/globals.css", import.meta.url), "utf8");
const [lightCss = "", restCss = ""] = css.split("@media screen and (prefers-color-scheme: dark)");
const [darkCss = "", torchCss = ""] = restCss.split(":root[data-torch] {");

function tokens(text: string): ReadonlyMap<string, string> {
  return new Map(Array.from(text.matchAll(/--([a-z-]+): (#[0-9a-f]{6});/g), (m) => [m[1] ?? "", m[2] ?? ""]));
}

const themes = [
  ["paper", tokens(lightCss.split("@theme")[0] ?? "")],
  ["night", tokens(darkCss)],
  // Over the night, which it must cover wholly.
  ["torch", new Map([...tokens(darkCss), ...tokens(torchCss.split("@theme")[0] ?? "")])],
] as const;

/** Expected: black on white is 21 to 1, and #767676 on white is the known grey just above 4.5 (WCAG 2.2). */
describe("the contrast ratio", () => {
  test("agrees with values known from the standard", () => {
    expect(contrastRatio("#000000", "#ffffff")).toBeCloseTo(21, 5);
    expect(contrastRatio("#767676", "#fff")).toBeCloseTo(4.54, 2);
  });
});

describe.each(themes)("the colours of %s", (_name, colors) => {
  const ratio = (a: string, b: string) =>
    contrastRatio(colors.get(a) ?? "missing", colors.get(b) ?? "missing");

  test.each(["paper", "sheet", "sunk"])("ink on %s is far above what text needs", (ground) => {
    expect(ratio("ink", ground)).toBeGreaterThan(10);
    expect(ratio("ink-muted", ground)).toBeGreaterThan(4.5);
  });

  test.each(["meets", "short", "unsure", "unmeasured", "caution"])("%s can be read as text", (tone) => {
    expect(ratio(tone, "sheet")).toBeGreaterThan(4.5);
    expect(ratio(tone, "paper")).toBeGreaterThan(4.5);
    expect(ratio(tone, `${tone}-tint`)).toBeGreaterThan(4.5);
  });

  test.each(["series-a", "series-b", "series-c", "series-d"])("%s is a label's colour too", (tone) => {
    expect(ratio(tone, "sheet")).toBeGreaterThan(4.5);
  });

  test("the edge of a field can be seen (3 to 1)", () => {
    expect(ratio("rule-strong", "sheet")).toBeGreaterThan(3);
    expect(ratio("rule-strong", "paper")).toBeGreaterThan(3);
  });
});

describe("a company's colour", () => {
  const [, light] = themes[0];
  const [, dark] = themes[1];

  test("any colour becomes readable on every ground of both themes", () => {
    const hex = fc.integer({ min: 0, max: 0xffffff }).map((n) => `#${n.toString(16).padStart(6, "0")}`);
    fc.assert(
      fc.property(hex, (color) => {
        const { onPaper, onNight } = accentContrast(color) ?? expect.unreachable();
        for (const ground of ["paper", "sheet", "sunk"]) {
          expect(contrastRatio(onPaper.color, light.get(ground) ?? "")).toBeGreaterThanOrEqual(4.5);
          expect(contrastRatio(onNight.color, dark.get(ground) ?? "")).toBeGreaterThanOrEqual(4.5);
        }
        expect(onPaper.textRatio).toBeGreaterThanOrEqual(4.5);
        expect(onNight.textRatio).toBeGreaterThanOrEqual(4.5);
      }),
      { seed: 20261125, numRuns: 300 },
    );
  });

  test("a strong colour stays as it is; a weak one is darkened and says so", () => {
    expect(accentContrast("#123")).toMatchObject({
      brand: "#112233",
      adjustedOnPaper: false,
      onPaper: { color: "#112233" },
    });
    expect(accentContrast("#ffe100")?.adjustedOnPaper).toBe(true);
    expect(accentContrast("#ffe100")?.brandOnPaperRatio).toBeLessThan(2);
  });

  test("what is not a colour gives none", () => {
    expect(accentContrast("red; } body { display: none")).toBeNull();
  });
});

describe("the palette for paper", () => {
  test("is the light theme", () => {
    const [, light] = themes[0];
    const nameOf = (tone: string) =>
      tone === "muted" ? "ink-muted" : tone.length === 1 ? `series-${tone}` : tone;
    for (const tone of TONES.filter((name) => name !== "accent")) {
      expect(PAPER_PALETTE[tone], tone).toBe(light.get(nameOf(tone)));
    }
    expect(css).toContain(`--accent: var(--accent-on-paper, ${PAPER_PALETTE.accent})`);
  });
});

import { describe, expect, test } from "vitest";
import type { Finding } from "@/lib/engineering/findings";
import { type LoadReadings, loadFindings } from "@/lib/engineering/load";
import { house, limits } from "./house";

const SOURCE =
  "ANSI/ASHRAE 62.2 need and leakage credit [F]; outdoor-air load at design and in wet, mild weather [C]";

function check(change: Partial<LoadReadings>, ruleId: string): Finding {
  const found = loadFindings({ ...house, ...change }, limits).find((said) => said.ruleId === ruleId);
  if (found === undefined) throw new Error(`no finding ${ruleId}`);
  return found;
}

describe(`load findings: ${SOURCE}`, () => {
  test("totals are for information: 30,000 Btu/h, 2.50 tons, 800 ft² to the ton", () => {
    const said = check({}, "load.totals");
    expect(said.verdict).toBeNull();
    expect(said.statement).toBe(
      "The cooling load is 30,000 Btu/h (2.50 tons), 0.80 of it sensible; 800 ft² to the ton, for information.",
    );
  });

  test("a total typed as the latent load: can't tell, and what the latent load would be", () => {
    const said = check(
      { sensibleCoolingBtuh: 24_500, latentCoolingBtuh: 31_000 },
      "load.latent-above-sensible",
    );
    expect(said.verdict).toBe("can't tell");
    // 31,000 − 24,500
    expect(said.nextStep).toContain("If 31,000 Btu/h is its total, the latent cooling load is 6,500 Btu/h");
    const even = { ...house, sensibleCoolingBtuh: 15_000, latentCoolingBtuh: 15_000 };
    expect(loadFindings(even, limits).map(({ ruleId }) => ruleId)).not.toContain(
      "load.latent-above-sensible",
    );
  });

  // 2,000 ft², 3 bedrooms need 90 cfm. Measured 2,000 cfm at 50 Pa, factor 0.5, one storey credits 52 cfm.
  test.each([
    ["60 mechanical and 52 credited", {}, "meets"],
    ["37 and 52: one short", { ventilationCfm: 37 }, "falls short"],
    ["assumed leakage has no credit", { leakageKnownBy: "assumed" }, "falls short"],
    ["90 mechanical needs no credit", { ventilationCfm: 90, leakageCfm50: null }, "meets"],
    // 100 cfm of credit would do; the cap of 67 %, 60.3 cfm, is from memory and only leaves the question open.
    ["credit above its cap", { ventilationCfm: 10, leakageCfm50: 4_000 }, "can't tell"],
    ["no mechanical value", { ventilationCfm: null }, "not measured"],
  ] as const)("outdoor air: %s", (_name, change, verdict) => {
    expect(check(change, "load.ventilation").verdict).toBe(verdict);
  });

  test("says how much outdoor air is missing: 90 cfm needed, 37 by the fan, 0.052 · 0.5 · 2,000 = 52 credited", () => {
    expect(check({ ventilationCfm: 37 }, "load.ventilation").nextStep).toBe(
      "Raise the mechanical outdoor air by 1.0 cfm.",
    );
    expect(check({ ventilationCfm: 90 }, "load.ventilation").nextStep).toBeNull();
  });

  test("outdoor-air load on the design day is the 60 cfm example; wet weather brings more water", () => {
    const said = check({}, "load.outdoor-air");
    const [hot, hotWater, , wetWater] = said.figures.map((figure) => figure.value);
    expect(Math.abs((hot ?? Number.NaN) / 2_767 - 1)).toBeLessThan(0.005);
    expect(wetWater).toBeGreaterThan(hotWater ?? Number.NaN);
    expect(check({ wetMildDbF: null }, "load.outdoor-air").inputs).toEqual(["wetMildDbF"]);
  });

  test("leakage is for information: 0.0552·2,000 = 110 in²", () => {
    const said = check({}, "load.leakage");
    expect(said.verdict).toBeNull();
    expect(said.statement).toMatch(/110 in²/);
    expect(check({ leakageCfm50: null }, "load.leakage").verdict).toBe("not measured");
  });

  test("the padding check is part of it", () => {
    expect(check({ safetyFactorPct: 10 }, "load.padding-safety-factor").verdict).toBe("falls short");
  });

  test("contradictions are refused: wet bulb above dry bulb", () => {
    expect(() => check({ outdoorCoolingWbF: 96 }, "load.totals")).toThrow(/outdoorCoolingWbF 96 °F is above/);
    expect(() => check({ wetMildDewPointF: 80 }, "load.totals")).toThrow(/wetMildDewPointF 80 °F is above/);
    expect(() => check({ outdoorCoolingDbF: 950 }, "load.totals")).toThrow(/outdoorCoolingDbF 950/);
  });
});

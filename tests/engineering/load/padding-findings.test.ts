import { describe, expect, test } from "vitest";
import type { Finding } from "@/lib/engineering/findings";
import { type LoadReadings, paddingEffects, paddingFindings } from "@/lib/engineering/load";
import { house, limits } from "./house";

const SOURCE =
  "design as the house is: indoor 75 °F, 50 % and 70 °F, no stacked safety factors (Manual J, from memory); effects by the arithmetic shown [C]";

function check(change: Partial<LoadReadings>, name: string): Finding {
  const found = paddingFindings({ ...house, ...change }, limits).find(
    (said) => said.ruleId === `load.padding-${name}`,
  );
  if (found === undefined) throw new Error(`no finding named ${name}`);
  return found;
}
const effectOf = (said: Finding) => said.figures.find((figure) => figure.unit === "Btu/h")?.value;

describe(`padding: ${SOURCE}`, () => {
  test("the seeds", () => {
    expect(limits["load.indoorCoolingDb"]).toBe(75);
    expect(limits["load.indoorCoolingRh"]).toBe(50);
    expect(limits["load.indoorHeatingDb"]).toBe(70);
  });

  test("a house designed as it is passes every check and has no padding", () => {
    const said = paddingFindings(house, limits);
    expect(said.slice(0, -1).map((one) => one.verdict)).toEqual(Array(9).fill("meets"));
    expect(effectOf(check({}, "total"))).toBe(0);
  });

  test.each([
    ["indoor-cooling", { indoorCoolingDbF: 72 }, 3 * 720],
    ["indoor-cooling", { indoorCoolingDbF: 78 }, -3 * 720],
    ["outdoor-cooling", { outdoorCoolingDbF: 99, weatherCoolingDbF: 94 }, 5 * 720],
    // 36,000 over 74 − 20 is 666.67 for each °F.
    ["indoor-heating", { indoorHeatingDbF: 74 }, (4 * 36_000) / 54],
    // 36,000 over 70 − 10 is 600 for each °F.
    ["outdoor-heating", { outdoorHeatingDbF: 10, weatherHeatingDbF: 22 }, 12 * 600],
    ["ducts", { ductLoadBtuh: 1_500 }, 1_500],
    ["duplicates", { duplicatedGainsBtuh: 800 }, 800],
    // 30,000 holds 10 % of what it was before: 30,000·0.1/1.1.
    ["safety-factor", { safetyFactorPct: 10 }, 2_727.27],
  ] as const)("%s %o: %d Btu/h", (name, change, expected) => {
    const said = check(change, name);
    expect(said.verdict).toBe("falls short");
    expect(effectOf(said)).toBeCloseTo(expected, 1);
  });

  test("indoor humidity 45 %: the drier room makes outdoor air cost more", () => {
    // 60 cfm and 0.052·0.5·2,000 = 52 cfm of leaks: 504 lb/h. pws 75 °F 0.4301 psia:
    // W at 50 % 0.009236, at 45 % 0.008300; times 1,061 + 0.444·75 = 1,094.3 Btu/lb: 516 Btu/h.
    const said = check({ indoorCoolingRhPct: 45 }, "indoor-humidity");
    expect(said.verdict).toBe("falls short");
    expect(Math.abs((effectOf(said) ?? Number.NaN) / 516 - 1)).toBeLessThan(0.01);
  });

  test("duct gain is right when the ducts run outside", () => {
    expect(check({ ductsInside: false, ductLoadBtuh: 1_500 }, "ducts").verdict).toBe("meets");
  });

  test("assumed leakage can't tell, and says what it carries", () => {
    const said = check({ leakageKnownBy: "assumed" }, "leakage");
    expect(said.verdict).toBe("can't tell");
    // 52 cfm at the conditions of the 60 cfm, 2,767 Btu/h example.
    expect(Math.abs((effectOf(said) ?? Number.NaN) / ((2_767 * 52) / 60) - 1)).toBeLessThan(0.005);
    expect(said.nextStep).toMatch(/blower door/);
  });

  test("the sum counts cooling effects only, and says what is open", () => {
    const change = {
      indoorCoolingDbF: 72,
      safetyFactorPct: 10,
      indoorHeatingDbF: 74,
      duplicatedGainsBtuh: null,
    };
    const said = check(change, "total");
    // With 74 °F indoors one °F is 666.67: 3·666.67 + 2,727.27.
    expect(effectOf(said)).toBeCloseTo(4_727.27, 1);
    expect(said.verdict).toBeNull();
    // 4,727 of 24,000 + 6,000 is 15.8 %.
    expect(said.statement).toMatch(
      /^Together the deviations add about 4,727 Btu\/h to the cooling load, 16 % of 30,000 Btu\/h\. 1 of 9 checks are open/,
    );
  });

  test("a summary below the house is said to take from the load: 78 °F indoors is 3 · 36,000/50 = 2,160 Btu/h less, 7 %", () => {
    const said = check({ indoorCoolingDbF: 78 }, "total");
    expect(said.statement).toMatch(
      /take about [\d,]+ Btu\/h from the cooling load, \d+ % of 30,000 Btu\/h\.$/,
    );
    expect(effectOf(said)).toBeCloseTo(-2_160, 0);
  });

  test("the effects stand side by side, cooling and heating, and add up", () => {
    const change = { indoorCoolingDbF: 72, safetyFactorPct: 10, indoorHeatingDbF: 74, ductLoadBtuh: 1_500 };
    const effects = paddingEffects({ ...house, ...change }, limits);
    const known = effects.rows.filter((row) => row.coolingBtuh !== 0 || row.heatingBtuh !== 0);
    // One °F is 36,000 / 54 = 666.67: 3 of them, and 4 on heating. Of 30,000 and 36,000, 10 % of what was before.
    const expected = [
      ["Indoor design temperature, cooling", 2_000, 0],
      ["Indoor design temperature, heating", 0, 2_666.67],
      ["Duct gain", 1_500, 0],
      ["Safety factor", 2_727.27, 3_272.73],
    ] as const;
    expect(known.map((row) => row.title)).toEqual(expected.map(([title]) => title));
    for (const [at, [, cooling, heating]] of expected.entries()) {
      expect(known[at]?.coolingBtuh).toBeCloseTo(cooling, 1);
      expect(known[at]?.heatingBtuh).toBeCloseTo(heating, 1);
    }
    expect(effects.rows.length).toBe(9);
    expect(effects.coolingBtuh).toBeCloseTo(6_227.27, 1);
    expect(effects.heatingBtuh).toBeCloseTo(5_939.4, 1);
    expect(effects.open).toBe(0);
    const total = check(change, "total");
    expect(total.figures.map((figure) => figure.label)).toEqual([
      "padding in the cooling load",
      "Indoor design temperature, cooling",
      "Duct gain",
      "Safety factor",
      "padding in the heating load",
    ]);
  });

  test.each([
    ["indoor-cooling", { indoorCoolingDbF: null }, ["indoorCoolingDbF"]],
    ["indoor-humidity", { indoorCoolingRhPct: null }, ["indoorCoolingRhPct"]],
    ["outdoor-cooling", { weatherCoolingDbF: null }, ["weatherCoolingDbF"]],
    [
      "outdoor-heating",
      { outdoorHeatingDbF: null, weatherHeatingDbF: null },
      ["outdoorHeatingDbF", "weatherHeatingDbF"],
    ],
    ["leakage", { leakageKnownBy: null }, ["leakageKnownBy"]],
    ["ducts", { ductsInside: null }, ["ductsInside"]],
    ["duplicates", { duplicatedGainsBtuh: null }, ["duplicatedGainsBtuh"]],
    ["safety-factor", { safetyFactorPct: null }, ["safetyFactorPct"]],
  ] as const)("%s without its input is not measured and names it", (name, change, missing) => {
    const said = check(change, name);
    expect(said.verdict).toBe("not measured");
    expect(said.inputs).toEqual(missing);
  });

  test("without the heating side a deviation stands, its effect is not said", () => {
    const said = check({ indoorCoolingDbF: 72, heatingBtuh: null }, "indoor-cooling");
    expect(said.verdict).toBe("falls short");
    expect(effectOf(said)).toBeUndefined();
    expect(said.statement).toMatch(/cannot be said/);
  });

  test("values that cannot be are refused by name", () => {
    expect(() => check({ indoorCoolingDbF: 750 }, "total")).toThrow(/indoorCoolingDbF/);
    expect(() => check({ weatherCoolingDbF: Number.NaN }, "total")).toThrow(/weatherCoolingDbF/);
    expect(() => check({ safetyFactorPct: -5 }, "total")).toThrow(/safetyFactorPct/);
    expect(() => check({ ductLoadBtuh: Number.POSITIVE_INFINITY }, "total")).toThrow(/ductLoadBtuh/);
  });
});

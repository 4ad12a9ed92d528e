import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { moistAir } from "@/lib/engineering/air";
import { seedLimits } from "@/lib/engineering/limit-definition";
import {
  type MoistureCondition,
  moistureBalance,
  moistureFindings,
  moistureLimits,
  supplementalNeed,
} from "@/lib/engineering/moisture";

const SOURCE = "water balance (physics)";
const limits = seedLimits(moistureLimits);
const indoor = moistAir({ dryBulbF: 75, relativeHumidityPct: 50, pressurePsia: 14.696 });
const household = { people: 4, personLbPerH: 0.115, householdPintsPerDay: 4, groundPintsPerDay: 0 };
const DESIGN: MoistureCondition = {
  outdoor: moistAir({ dryBulbF: 95, wetBulbF: 77, pressurePsia: 14.696 }),
  indoor,
  outdoorAirCfm: 100,
  household,
  coolingRemovalLbPerH: 5,
  dehumidifierLbPerH: 0,
};
const WET_MILD = {
  outdoor: moistAir({ dryBulbF: 78, dewPointF: 75, pressurePsia: 14.696 }),
  indoor,
  outdoorAirCfm: 100,
  household,
  dehumidifierLbPerH: 0,
};
const PART_LOAD = {
  maxCyclesPerH: 3,
  timeConstantS: 45,
  wetTimeS: 1_000,
  gamma: 1.5,
  runFraction: 0.6,
  fan: { kind: "continuous" },
} as const;

describe(`moisture balance, ${SOURCE}`, () => {
  it("adds up in minus out by hand", () => {
    const found = moistureBalance(DESIGN);
    const dryAir = 6_000 / DESIGN.outdoor.specificVolumeFt3PerLb;
    const outdoor = dryAir * (DESIGN.outdoor.humidityRatio - indoor.humidityRatio);
    const inside = 4 * 0.115 + (4 * 1.0421) / 24;
    expect(found.netLbPerH).toBeCloseTo(inside + outdoor - 5, 3);
  });

  it("the wet, mild day brings as much outdoor water as the hot one, and no cooling takes it", () => {
    const need = supplementalNeed(WET_MILD);
    expect(need.removalLbPerH).toBe(0);
    // Dew point 75 °F holds W 0.0188, indoor 0.0093: 438 lb/h · 0.0095 = 4.2 lb/h.
    expect(Math.abs(need.outdoorAirLbPerH - 4.15)).toBeLessThan(0.1);
    expect(need.missingPintsPerDay).toBeCloseTo((need.netLbPerH / 1.0421) * 24, 1);
    expect(need.outdoorAirLbPerH).toBeGreaterThan(moistureBalance(DESIGN).outdoorAirLbPerH);
  });

  it("law: the net rises with every source and falls with every removal", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 5, noNaN: true }), (more) => {
        const one = moistureBalance(DESIGN).netLbPerH;
        expect(moistureBalance({ ...DESIGN, coolingRemovalLbPerH: 5 + more }).netLbPerH).toBeCloseTo(
          one - more,
          9,
        );
        expect(moistureBalance({ ...DESIGN, dehumidifierLbPerH: more }).netLbPerH).toBeCloseTo(one - more, 9);
        expect(moistureBalance({ ...DESIGN, outdoorAirCfm: 100 + more }).netLbPerH).toBeGreaterThan(one);
      }),
      { seed: 20261125, numRuns: 100 },
    );
  });
});

describe("moistureFindings", () => {
  it("meets at design, falls short in mild wet weather, and names the capacity missing", () => {
    const [design, wetMild, partLoad] = moistureFindings(
      { design: DESIGN, wetMild: WET_MILD, partLoad: PART_LOAD },
      limits,
    );
    expect(design).toMatchObject({ ruleId: "moisture.design-balance", verdict: "meets", binding: true });
    expect(wetMild).toMatchObject({ ruleId: "moisture.wet-mild-balance", verdict: "falls short" });
    expect(wetMild?.statement).toMatch(/pint\/day/);
    expect(wetMild?.caution).toMatch(/surfaces/);
    expect(partLoad).toMatchObject({ ruleId: "moisture.re-evaporation", verdict: "falls short" });
    expect(partLoad?.statement).toBe(
      "At 60 % running time 14 % of the latent capacity is kept; at least 80 % is wanted.",
    );
    expect(partLoad?.basis.certainty).toBe("practice");
    expect([design?.nextStep, design?.caution]).toEqual([null, null]);
    expect(wetMild?.nextStep).toMatch(/dehumidifier of that capacity/);
    expect(partLoad?.nextStep).toMatch(/Turn the fan off between calls/);
    // The fan off with the compressor: nothing goes back, all of it is kept.
    const [, , kept] = moistureFindings(
      { design: DESIGN, wetMild: WET_MILD, partLoad: { ...PART_LOAD, fan: { kind: "off" } } },
      limits,
    );
    expect(kept).toMatchObject({ verdict: "meets", nextStep: null });
    expect(kept?.figures[0]?.value).toBe(1);
  });

  it("a dehumidifier large enough settles it", () => {
    const need = supplementalNeed(WET_MILD).netLbPerH;
    const at = (dehumidifierLbPerH: number) =>
      moistureFindings(
        { design: DESIGN, wetMild: { ...WET_MILD, dehumidifierLbPerH }, partLoad: null },
        limits,
      )[1]?.verdict;
    expect(at(need + 0.01)).toBe("meets");
    expect(at(need - 0.01)).toBe("falls short");
  });

  it("names what is missing instead of taking zero for it", () => {
    const found = moistureFindings(
      {
        design: { ...DESIGN, outdoorAirCfm: null, household: { ...household, groundPintsPerDay: null } },
        wetMild: { ...WET_MILD, outdoor: null },
        partLoad: null,
      },
      limits,
    );
    expect(found.map((one) => one.verdict)).toEqual(["not measured", "not measured", "not measured"]);
    expect(found.map((one) => one.inputs)).toEqual([
      ["design.outdoorAirCfm", "design.household.groundPintsPerDay"],
      ["wetMild.outdoor"],
      ["partLoad"],
    ]);
  });
});

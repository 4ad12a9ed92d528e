import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { stageDropTransient } from "@/lib/engineering/equipment";
import { ImpossibleStateError } from "@/lib/engineering/errors";
import { indoorAir, SYSTEM } from "./fixtures";

const SOURCE = "balances (physics); settling in 15 to 16 minutes: common practice, no source";
const entering = indoorAir(75, 55);
const DROP = {
  entering,
  system: { ...SYSTEM, heldTemperatureF: 44 },
  airflowBeforeCfm: 1_000,
  airflowAfterCfm: 600,
  settlingMinutes: 15,
  minutes: 30,
};

describe(`stageDropTransient, ${SOURCE}`, () => {
  it("starts from the old capacity on the new airflow and ends in the new steady state", () => {
    const ramp = stageDropTransient({ ...DROP, shape: "ramp" });
    expect(ramp.minutes).toHaveLength(31);
    expect(ramp.minutes[0]?.totalBtuh).toBe(ramp.before.totalBtuh);
    for (const entry of ramp.minutes.slice(15)) {
      expect(entry.totalBtuh).toBeCloseTo(ramp.after.totalBtuh, 6);
      expect(entry.adpF).toBeCloseTo(ramp.after.adpF, 6);
      expect(entry.moistureLbPerH).toBeCloseTo(ramp.after.moistureLbPerH, 6);
    }
  });

  it("first-order: 2 % of the step is left at the settling time", () => {
    const { before, after, minutes } = stageDropTransient({ ...DROP, shape: "first-order" });
    const left = ((minutes[15]?.totalBtuh ?? 0) - after.totalBtuh) / (before.totalBtuh - after.totalBtuh);
    expect(left).toBeCloseTo(0.02, 9);
  });

  it("counts the extra water by the trapezoid rule", () => {
    const { after, minutes, extraMoistureLb } = stageDropTransient({ ...DROP, shape: "ramp" });
    const excess = minutes.map((entry) => entry.moistureLbPerH - after.moistureLbPerH);
    const inner = excess.slice(1, -1).reduce((sum, value) => sum + value, 0);
    const ends = ((excess[0] ?? 0) + (excess.at(-1) ?? 0)) / 2;
    expect(extraMoistureLb).toBeCloseTo((inner + ends) / 60, 9);
    expect(extraMoistureLb).toBeGreaterThan(0.1);
  });

  it("stops at the frost limit and says so", () => {
    const { minutes } = stageDropTransient({
      ...DROP,
      system: { ...DROP.system, frostLimitF: 44 },
      airflowAfterCfm: 500,
      shape: "ramp",
    });
    expect(minutes[0]?.atFrostLimit).toBe(true);
    expect(minutes[0]?.adpF).toBeCloseTo(44, 9);
    expect(minutes[30]?.atFrostLimit).toBe(false);
  });

  it("refuses a rise and a system that does not run steadily", () => {
    expect(() => stageDropTransient({ ...DROP, airflowAfterCfm: 1_200, shape: "ramp" })).toThrow(
      ImpossibleStateError,
    );
    expect(() =>
      stageDropTransient({
        ...DROP,
        system: { ...DROP.system, minimumCapacityBtuh: 30_000 },
        airflowAfterCfm: 150,
        shape: "ramp",
      }),
    ).toThrow(/steadily/);
  });
});

describe("law", () => {
  it("meanwhile the coil is colder than before and after, and takes more water per Btu; both settle without turning", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 45, max: 60, noNaN: true }),
        fc.double({ min: 700, max: 1_200, noNaN: true }),
        fc.double({ min: 0.6, max: 0.9, noNaN: true }),
        fc.double({ min: 42, max: 47, noNaN: true }),
        fc.constantFrom("ramp" as const, "first-order" as const),
        (rh, cfm, share, heldTemperatureF, shape) => {
          const { before, after, minutes } = stageDropTransient({
            ...DROP,
            entering: indoorAir(75, rh),
            system: { ...SYSTEM, heldTemperatureF },
            airflowBeforeCfm: cfm,
            airflowAfterCfm: cfm * share,
            shape,
          });
          const first = minutes[0];
          if (first === undefined) throw new Error("no minutes");
          expect(first.adpF).toBeLessThan(before.adpF);
          expect(first.adpF).toBeLessThanOrEqual(after.adpF + 1e-9);
          const perBtuBefore = (before.moistureLbPerH / before.totalBtuh) * 1_000;
          expect(first.moistureLbPer1000Btu).toBeGreaterThan(perBtuBefore);
          for (const [index, entry] of minutes.entries()) {
            const previous = minutes[index - 1];
            if (previous === undefined) continue;
            expect(entry.adpF).toBeGreaterThanOrEqual(previous.adpF - 1e-9);
            expect(entry.totalBtuh).toBeLessThanOrEqual(previous.totalBtuh + 1e-9);
            expect(entry.moistureLbPer1000Btu).toBeLessThanOrEqual(previous.moistureLbPer1000Btu + 1e-9);
          }
        },
      ),
      { seed: 20261125, numRuns: 200 },
    );
  });
});

import { describe, expect, it } from "vitest";
import { houseFromLoadSummary, simulateYear } from "@/lib/engineering/simulation";
import { sunHeatByHour } from "@/lib/engineering/simulation/weather-drive";
import { BASE, COASTAL } from "./fixtures";
import { LOAD } from "./load-of-a-house";

const SOURCE = "hand balances at the two design conditions (physics)";

describe(`a house from its load summary: ${SOURCE}`, () => {
  it("conductance, by hand", () => {
    // A_L = 0.0552 · 1,500 = 82.8 in²; 82.8 √(0.015 · 40 + 0.0039 · 7.5²) = 74.96 cfm; 30,000/40 − 1.08 · 134.96 = 604.2
    const { house } = houseFromLoadSummary(LOAD, COASTAL);
    expect(Math.abs(house.leakageAreaIn2 - 82.8)).toBeLessThan(0.1);
    expect(Math.abs(house.conductanceBtuhPerF - 604.2)).toBeLessThan(1);
    expect(house.volumeFt3).toBe(17_000);
  });

  it("at 5,000 ft the air carries less, and the enclosure what is left", () => {
    // 12.228 psia (1976 standard atmosphere): 1.08 · 12.228/14.696 · 134.96 cfm = 121.3; 30,000/40 − 121.3 = 628.7
    const high = { ...COASTAL, pressurePsia: COASTAL.pressurePsia.map(() => 12.228) };
    const { house } = houseFromLoadSummary(LOAD, high);
    expect(Math.abs(house.conductanceBtuhPerF - 628.7)).toBeLessThan(1);
  });

  it("water, by hand: 4 people at 0.11 pint/h, 4 showers, dinner, dishes", () => {
    // 0.44 + (2 + 1.2 + 0.68)/24 = 0.6017 pint/h of 1.043 lb
    const { house } = houseFromLoadSummary(LOAD, COASTAL);
    expect(Math.abs((house.moistureLbPerHByHour[0] ?? 0) - 0.6276)).toBeLessThan(0.002);
  });

  it("heat held, by hand: air 1.2, mass 4 Btu/°F and 1.5 Btu/(h·°F) between them for each of 2,000 ft²", () => {
    const { house } = houseFromLoadSummary(LOAD, COASTAL);
    expect(house.airCapacitanceBtuPerF).toBeCloseTo(2_400, 9);
    expect(house.massCapacitanceBtuPerF).toBeCloseTo(8_000, 9);
    expect(house.massCouplingBtuhPerF).toBeCloseTo(3_000, 9);
  });

  it("sun of an overcast hour, by hand: level glass sees all the sky; a wall half of it and half of the ground's fifth", () => {
    const half = { name: "glass", azimuthDeg: 180, areaFt2: 10, transmittance: 0.5 };
    const level = sunHeatByHour(COASTAL, [{ ...half, tiltDeg: 0 }]);
    const wall = sunHeatByHour(COASTAL, [{ ...half, tiltDeg: 90 }]);
    const { directNormalBtuhPerFt2, diffuseHorizontalBtuhPerFt2, globalHorizontalBtuhPerFt2 } = COASTAL;
    const overcast = Array.from(level.keys()).filter(
      (hour) => directNormalBtuhPerFt2[hour] === 0 && (diffuseHorizontalBtuhPerFt2[hour] ?? 0) > 10,
    );
    expect(overcast.length).toBeGreaterThan(50);
    for (const hour of overcast) {
      const sky = diffuseHorizontalBtuhPerFt2[hour] ?? Number.NaN;
      const global = globalHorizontalBtuhPerFt2[hour] ?? Number.NaN;
      expect(level[hour]).toBeCloseTo(5 * sky, 6);
      expect(wall[hour]).toBeCloseTo(5 * (sky / 2 + (0.2 * global) / 2), 6);
    }
  });

  it("every assumption is stated and may be changed", () => {
    const changed = houseFromLoadSummary(LOAD, COASTAL, { householdPintsPerDay: 20, airChangesAt50Pa: 10 });
    for (const one of changed.assumptions) expect(one.why.length).toBeGreaterThan(5);
    expect(changed.assumptions.find((one) => one.name === "householdPintsPerDay")?.value).toBe(20);
    // 10 · 17,000/60 = 2,833 cfm at 50 Pa
    expect(Math.abs(changed.house.leakageAreaIn2 - 0.0552 * 2_833)).toBeLessThan(0.3);
  });

  it("its year closes", () => {
    const { house } = houseFromLoadSummary(LOAD, COASTAL);
    const year = simulateYear({ ...BASE, house });
    expect(Math.abs(year.heat.relative)).toBeLessThan(1e-9);
    expect(Math.abs(year.water.relative)).toBeLessThan(1e-9);
  });

  it("refuses loads that contradict each other", () => {
    expect(() => houseFromLoadSummary({ ...LOAD, heatingBtuh: 4_000 }, COASTAL)).toThrow(/Outdoor air alone/);
    expect(() => houseFromLoadSummary({ ...LOAD, sensibleCoolingBtuh: 12_000 }, COASTAL)).toThrow(
      /inside gains exceed/,
    );
    expect(() => houseFromLoadSummary({ ...LOAD, outdoorCoolingDbF: 125 }, COASTAL)).toThrow(
      /exceed|never reaches/,
    );
  });
});

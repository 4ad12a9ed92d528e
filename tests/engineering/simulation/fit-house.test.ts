import { describe, expect, it } from "vitest";
import {
  FIT_FACTORS,
  fitHouseToLog,
  fittedHouse,
  type HouseLog,
  houseMembers,
  houseWithFactors,
  simulateYear,
} from "@/lib/engineering/simulation";
import { freeRun } from "@/lib/engineering/simulation/free-run";
import { boundedLeastSquares } from "@/lib/engineering/simulation/least-squares";
import { seededChance } from "@/lib/engineering/simulation/seeded-draws";
import { BASE, HOUSE, steadyWeather } from "./fixtures";

const SOURCE =
  "houses whose factors are known (computed); a straight line by its textbook formulas (computed); the year's minute loop (computed)";

/** Outdoors and system of three weeks by the hour: cooling by day, drying with it. */
function logOf(days: number): HouseLog {
  const length = days * 24;
  const column = (of: (hour: number) => number) => Float64Array.from({ length }, (_, hour) => of(hour));
  const wave = (hour: number, late: number) => Math.sin((2 * Math.PI * (hour - late)) / 24);
  const front = (hour: number) => Math.sin((2 * Math.PI * hour) / 130);
  return {
    intervalMin: 60,
    pressurePsia: 14.696,
    startsAnew: Uint8Array.from({ length }, (_, hour) => (hour === 0 ? 1 : 0)),
    day: Int32Array.from({ length }, (_, hour) => Math.floor(hour / 24)),
    clockHour: Uint8Array.from({ length }, (_, hour) => hour % 24),
    indoorF: column(() => 75),
    indoorRatio: column(() => 0.0095),
    outdoorF: column((hour) => 82 + 9 * wave(hour, 9) + 6 * front(hour)),
    outdoorRatio: column((hour) => 0.014 + 0.003 * Math.sin((2 * Math.PI * hour) / 75)),
    windMph: column((hour) => 6 + 4 * Math.sin(hour / 17)),
    sunBtuh: column((hour) => 9_000 * Math.max(0, wave(hour, 6))),
    cooledBtuh: column((hour) => 9_000 + 7_000 * Math.max(0, wave(hour, 9)) + 2_400 * front(hour)),
    driedLbPerH: column((hour) => 2.5 + 1.2 * Math.max(0, wave(hour, 9))),
    ventilationCfm: column(() => 60),
  };
}

const TRUE = { conductance: 1.2, leakage: 1.5, gains: 0.8, moisture: 1.3, buffer: 0.7 };

/** The log as such a house would have written it, with sensors that scatter. */
function writtenBy(factors: typeof TRUE, scatterF: number, scatterRatio: number): HouseLog {
  const log = logOf(21);
  const { indoorF, indoorRatio } = log;
  freeRun(houseWithFactors(HOUSE, factors), log, indoorF, indoorRatio);
  const random = seededChance(5);
  for (let hour = 0; hour < indoorF.length; hour++) {
    indoorF[hour] = (indoorF[hour] ?? 0) + scatterF * (random() + random() - 1);
    indoorRatio[hour] = (indoorRatio[hour] ?? 0) + scatterRatio * (random() + random() - 1);
  }
  return log;
}

describe(`a house fitted to its log: ${SOURCE}`, () => {
  it("is found again, and tells days it has not seen", () => {
    const fit = fitHouseToLog(HOUSE, writtenBy(TRUE, 0.4, 0.0002));
    for (const name of FIT_FACTORS) {
      const uncertain = fit.uncertain.find((one) => one.name === name);
      expect(Math.abs(fit.factors[name] - TRUE[name])).toBeLessThan(0.12);
      expect(uncertain?.low).toBeLessThanOrEqual(fit.factors[name]);
      expect(uncertain?.high).toBeGreaterThanOrEqual(fit.factors[name]);
    }
    expect(fit.heldOut.days).toBe(5);
    // Sixteen days but the first, in which mass and furnishings settle.
    expect(fit.fitted.days).toBe(15);
    // The scatter itself is 0.4/√6 = 0.16 °F and 0.0002 · 7,000/√6 = 0.57 grains.
    expect(fit.heldOut.temperatureF).toBeLessThan(0.2);
    expect(fit.heldOut.grainsPerLb).toBeLessThan(0.7);
    expect(fit.heldOutBefore.temperatureF).toBeGreaterThan(3 * fit.heldOut.temperatureF);
    expect(fit.heldOutBefore.grainsPerLb).toBeGreaterThan(3 * fit.heldOut.grainsPerLb);
  });

  it("a leakier house than assumed is said to be leakier", () => {
    const leaky = { conductance: 1, leakage: 2, gains: 1, moisture: 1, buffer: 1 };
    const fit = fitHouseToLog(HOUSE, writtenBy(leaky, 0.2, 0.0001));
    expect(Math.abs(fit.factors.leakage - 2)).toBeLessThan(0.15);
    expect(fit.uncertain.find((one) => one.name === "leakage")?.low).toBeGreaterThan(1.5);
  });

  it("forecasts again with what the log leaves open", () => {
    const fit = fitHouseToLog(HOUSE, writtenBy(TRUE, 0.4, 0.0002));
    const { members, uncertain } = houseMembers(fittedHouse(HOUSE, fit.uncertain), BASE.weather, 5, 1);
    expect(uncertain.slice(0, 5).map((one) => one.name)).toEqual([...FIT_FACTORS]);
    expect(members[0]?.house).toEqual(fit.house);
    for (const { house, values } of members) {
      expect(house?.leakageAreaIn2).toBeCloseTo(HOUSE.leakageAreaIn2 * (values[1] ?? 0), 9);
    }
  });

  it("refuses a log too short, of unequal columns, or with a gap", () => {
    expect(() => fitHouseToLog(HOUSE, logOf(3))).toThrow(/needs 4 days/);
    expect(() => fitHouseToLog(HOUSE, { ...logOf(8), windMph: new Float64Array(5) })).toThrow(
      /windMph has 5/,
    );
    const gap = logOf(8);
    gap.outdoorRatio[30] = Number.NaN;
    expect(() => fitHouseToLog(HOUSE, gap)).toThrow(/outdoorRatio/);
  });
});

it("the rooms carried by a log are the year's rooms: no cooling, the same ten days", () => {
  const weather = steadyWeather(240, 70, 0.008);
  const log = logOf(10);
  for (let hour = 0; hour < 240; hour++)
    weather.dryBulbF[hour] = 70 + 4 * Math.sin((2 * Math.PI * (hour + 1)) / 24);
  const none = Array.from({ length: 24 }, () => 800);
  const house = { ...HOUSE, apertures: [], gainsBtuhByHour: none };
  const year = simulateYear({
    ...BASE,
    house,
    weather,
    controls: { ...BASE.controls, coolingSetpointF: 90, heatingSetpointF: 45 },
  });
  for (let hour = 0; hour < 240; hour++) {
    log.outdoorF[hour] = 70 + 4 * Math.sin((2 * Math.PI * (hour + 0.5)) / 24);
    log.outdoorRatio[hour] = 0.008;
    log.windMph[hour] = 0;
    log.sunBtuh[hour] = 0;
    log.cooledBtuh[hour] = 0;
    log.driedLbPerH[hour] = 0;
  }
  log.indoorF[0] = year.hourF[239] ?? 0;
  const roomF = new Float64Array(240);
  freeRun(house, log, roomF, new Float64Array(240));
  // An hour's step against sixty of a minute; the mass begins as warm as the air here and has four days to forget it.
  for (let hour = 120; hour < 240; hour++) {
    expect(Math.abs((roomF[hour] ?? 0) - (year.hourF[hour] ?? 0))).toBeLessThan(0.1);
  }
});

describe("least squares", () => {
  const x = [0, 1, 2, 3, 4];
  const y = [1.1, 2.9, 5.2, 6.8, 9.1];
  const line = (values: readonly number[]) =>
    Float64Array.from(x, (one, index) => (values[0] ?? 0) + (values[1] ?? 0) * one - (y[index] ?? 0));

  it("a straight line by hand: slope 1.99, level 1.04", () => {
    // Means 2 and 5.02; Σ(x−2)(y−5.02) = 19.9, Σ(x−2)² = 10. Residuals 0.06, −0.13, 0.18, −0.21, 0.10: Σ² = 0.107, s² = 0.03567;
    // slope's error √(0.03567/10) = 0.0597.
    const found = boundedLeastSquares(line, [0, 0], [-10, -10], [10, 10]);
    expect(found.values[1]).toBeCloseTo(1.99, 5);
    expect(found.values[0]).toBeCloseTo(1.04, 5);
    expect(found.standardErrors[1]).toBeCloseTo(0.0597, 3);
  });

  it("residuals that hang together in groups: the scatter of their sums, by hand 0.002", () => {
    // With groups {0, 1, 2} and {3, 4} the slope's scores (x−2)·residual sum to −0.12 + 0.13 + 0 = 0.01 and −0.21 + 0.20 = −0.01.
    // The level follows the slope; centred, the slope's error is √(2/1 · (0.01² + 0.01²))/10 = 0.002.
    const found = boundedLeastSquares(line, [0, 0], [-10, -10], [10, 10], Int32Array.from([0, 0, 0, 1, 1]));
    expect(found.standardErrors[1]).toBeCloseTo(0.002, 4);
  });

  it("stays within its bounds", () => {
    const found = boundedLeastSquares(line, [0, 0], [-10, -10], [10, 1.5]);
    expect(found.values[1]).toBe(1.5);
    // With the slope held, the level is 5.02 − 1.5 · 2.
    expect(found.values[0]).toBeCloseTo(2.02, 4);
  });
});

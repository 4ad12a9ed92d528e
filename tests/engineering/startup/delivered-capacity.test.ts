import { describe, expect, it, test } from "vitest";
import { airSideCapacity, moistAir } from "@/lib/engineering/air";
import {
  type AirReadings,
  type DeliveredCapacity,
  deliveredCapacity,
  expectedAtConditions,
  type UncertainInput,
} from "@/lib/engineering/startup";
import { bare, READINGS_OF_A_GOOD_STAGE, readWith } from "./example-stage";
import { simulatedStandardUncertainty } from "./monte-carlo";

const SOURCE =
  "ASHRAE cooling-coil example in IP [M+, C]: 10,000 cfm, 85 °F 50 % → saturated 50 °F: about 50.8 tons, 226 lb/h";

const NOTHING: AirReadings = {
  airflowCfm: null,
  returnDryBulbF: null,
  returnWetBulbF: null,
  returnRelativeHumidityPct: null,
  supplyDryBulbF: null,
  supplyWetBulbF: null,
  supplyRelativeHumidityPct: null,
};
const deliver = (readings: Partial<AirReadings>): DeliveredCapacity =>
  deliveredCapacity({ elevationFt: 0, readings: { ...NOTHING, ...readings }, systematicShare: 0.7 });

test(SOURCE, () => {
  const delivered = deliver({
    airflowCfm: bare(10_000),
    returnDryBulbF: bare(85),
    returnRelativeHumidityPct: bare(50),
    supplyDryBulbF: bare(50),
    supplyRelativeHumidityPct: bare(100),
  });
  // Both are rounded in the source; 0.5 % covers it and the ideal-gas humidity ratio.
  expect(delivered.totalBtuh.value / 12_000 / 50.8).toBeCloseTo(1, 2);
  expect(Math.abs(delivered.moistureLbPerH.value / 226 - 1)).toBeLessThan(0.005);
  expect(delivered.unknownAccuracy).toHaveLength(5);
  expect(delivered.totalBtuh.expandedUncertainty).toBe(0);
});

describe("uncertainty", () => {
  const delivered = deliver(READINGS_OF_A_GOOD_STAGE);

  it("total is sensible plus latent, and the ratio their quotient", () => {
    const { totalBtuh, sensibleBtuh, latentBtuh, sensibleRatio } = delivered;
    expect(sensibleBtuh.value + latentBtuh.value).toBeCloseTo(totalBtuh.value, 6);
    expect(sensibleRatio?.value).toBeCloseTo(sensibleBtuh.value / totalBtuh.value, 9);
    expect(delivered.unknownAccuracy).toEqual([]);
  });

  it("airflow alone: capacity is proportional to it, so 5 % rectangular gives U = 2·5 %/√3 = 5.77 %", () => {
    const exact = Object.fromEntries(
      Object.entries(READINGS_OF_A_GOOD_STAGE).map(([name, reading]) => [
        name,
        name === "airflowCfm" || reading === null ? reading : bare(reading.value),
      ]),
    ) as AirReadings;
    const { totalBtuh } = deliver(exact);
    expect(totalBtuh.expandedUncertainty / totalBtuh.value).toBeCloseTo(0.057735, 5);
  });

  it.each(["totalBtuh", "sensibleBtuh", "latentBtuh", "moistureLbPerH"] as const)(
    "%s agrees with a seeded Monte Carlo within 3 percent, one probe used twice a side",
    (key) => {
      const pressurePsia = 14.696;
      const u = (value: number, accuracy: number, instrumentId: string): UncertainInput => ({
        value,
        standardUncertainty: accuracy / Math.sqrt(3),
        instrumentId,
        systematicShare: 0.7,
      });
      const simulated = simulatedStandardUncertainty(
        ({ cfm, rdb, rwb, sdb, swb }) =>
          airSideCapacity({
            airflowCfm: cfm,
            entering: moistAir({ dryBulbF: rdb, wetBulbF: rwb, pressurePsia }),
            leaving: moistAir({ dryBulbF: sdb, wetBulbF: swb, pressurePsia }),
          })[key],
        {
          cfm: u(1_200, 60, "hood"),
          rdb: u(75, 0.3, "probe-1"),
          rwb: u(63, 0.3, "probe-1"),
          sdb: u(55, 0.3, "probe-2"),
          swb: u(53.5, 0.3, "probe-2"),
        },
        20_000,
      );
      expect(Math.abs(delivered[key].standardUncertainty / simulated - 1)).toBeLessThan(0.03);
    },
  );

  it("a better wet bulb narrows the latent capacity more than a better dry bulb narrows the total", () => {
    const better = deliver({ ...READINGS_OF_A_GOOD_STAGE, supplyWetBulbF: readWith(53.5, 0.05, "°F") });
    expect(better.latentBtuh.expandedUncertainty).toBeLessThan(delivered.latentBtuh.expandedUncertainty);
  });
});

test("saturated supply air: the wet bulb can only be lower, and the answer is still finite", () => {
  const { totalBtuh } = deliver({
    ...READINGS_OF_A_GOOD_STAGE,
    supplyDryBulbF: readWith(53, 0.3, "°F"),
    supplyWetBulbF: readWith(53, 0.3, "°F"),
  });
  expect(totalBtuh.expandedUncertainty).toBeGreaterThan(0);
});

test("no net cooling has no sensible ratio", () => {
  const { sensibleRatio } = deliver({
    ...READINGS_OF_A_GOOD_STAGE,
    supplyDryBulbF: bare(75),
    supplyWetBulbF: bare(63),
  });
  expect(sensibleRatio).toBeNull();
});

test("cooling smaller than its own uncertainty has none either", () => {
  const { sensibleRatio, totalBtuh } = deliver({
    ...READINGS_OF_A_GOOD_STAGE,
    supplyDryBulbF: readWith(74.5, 0.3, "°F"),
    supplyWetBulbF: readWith(62.8, 0.3, "°F"),
  });
  expect(totalBtuh.value).toBeGreaterThan(0);
  expect(totalBtuh.value).toBeLessThan(totalBtuh.expandedUncertainty);
  expect(sensibleRatio).toBeNull();
});

test("refuses with the name of the reading", () => {
  expect(() => deliver({ ...READINGS_OF_A_GOOD_STAGE, airflowCfm: null })).toThrow("airflowCfm is missing");
  expect(() => deliver({ ...READINGS_OF_A_GOOD_STAGE, supplyWetBulbF: bare(56) })).toThrow(
    "supply wet bulb 56 °F is above the dry bulb 55 °F",
  );
  expect(() => deliver({ ...READINGS_OF_A_GOOD_STAGE, returnDryBulbF: readWith(75, 0.2, "°C") })).toThrow(
    "returnDryBulbF is in °F",
  );
});

test("share of expected: 30,000 ± 2,000 of 40,000 is 0.75 ± 0.05; nothing expected has no share", () => {
  const value = (v: number, expandedUncertainty: number) => ({
    value: v,
    standardUncertainty: expandedUncertainty / 2,
    expandedUncertainty,
    budget: [],
  });
  const comparison = expectedAtConditions(
    { totalBtuh: value(30_000, 2_000), sensibleBtuh: value(20_000, 0), moistureLbPerH: value(1, 0) },
    { totalBtuh: 40_000, sensibleBtuh: null, moistureLbPerH: 0 },
  );
  expect(comparison.totalShare?.value).toBeCloseTo(0.75, 12);
  expect(comparison.totalShare?.expandedUncertainty).toBeCloseTo(0.05, 12);
  expect(comparison.sensibleShare).toBeNull();
  expect(comparison.moistureShare).toBeNull();
});

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type MoistAir, moistAir } from "@/lib/engineering/air";
import { isEngineeringError } from "@/lib/engineering/errors";
import { seedLimits } from "@/lib/engineering/limit-definition";
import {
  bufferedMoistureLb,
  bufferTimeConstant,
  dehumidifierAt,
  dehumidifierHeatBtuh,
  effectiveSensibleRatio,
  type FanBetweenCalls,
  gallonsPerHour,
  householdMoistureLbPerH,
  latentRatio,
  lbPerHFromGallonsPerHour,
  lbPerHFromPintsPerDay,
  moistureBalance,
  moistureFindings,
  moistureLimits,
  moistureRemoval,
  outdoorAirMoistureLbPerH,
  pintsPerDay,
  supplementalNeed,
  wetCoilAtConditions,
} from "@/lib/engineering/moisture";

const RUNS = { seed: 20261125, numRuns: Number(process.env.DEWLEDGER_RANDOM_RUNS ?? 2000) };

const wild = fc.oneof(
  fc.constantFrom(Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 0, -0, -1, 1e300, 5e-324),
  fc.double(),
);
function mostly(min: number, max: number): fc.Arbitrary<number> {
  return fc.oneof(
    { weight: 30, arbitrary: fc.double({ min, max, noNaN: true }) },
    { weight: 1, arbitrary: wild },
  );
}
const air: fc.Arbitrary<MoistAir> = fc
  .record({
    dryBulbF: fc.double({ min: 0, max: 120, noNaN: true }),
    relativeHumidityPct: fc.double({ min: 1, max: 100, noNaN: true }),
    pressurePsia: fc.constantFrom(14.696, 12.2),
  })
  .map(moistAir);

function expectFinite(value: unknown): void {
  if (typeof value === "number") {
    if (!Number.isFinite(value)) throw new Error(`not finite: ${value}`);
  } else if (Array.isArray(value)) for (const one of value) expectFinite(one);
  else if (typeof value === "object" && value !== null)
    for (const one of Object.values(value)) expectFinite(one);
}

function attempt<T>(work: () => T): T | null {
  try {
    const result = work();
    expectFinite(result);
    return result;
  } catch (error) {
    if (isEngineeringError(error)) return null;
    throw error;
  }
}

const household = fc.record({
  people: mostly(0, 10),
  personLbPerH: mostly(0, 0.5),
  householdPintsPerDay: mostly(0, 40),
  groundPintsPerDay: mostly(0, 100),
});
const condition = fc.record({
  outdoor: air,
  indoor: air,
  outdoorAirCfm: mostly(0, 500),
  household,
  coolingRemovalLbPerH: mostly(0, 12),
  dehumidifierLbPerH: mostly(0, 6),
});
const partLoad = fc.record({
  maxCyclesPerH: mostly(0.1, 12),
  timeConstantS: mostly(1, 600),
  wetTimeS: mostly(1, 10_000),
  gamma: mostly(0, 20),
  runFraction: mostly(0.001, 1),
  fan: fc.oneof(
    fc.constant<FanBetweenCalls>({ kind: "continuous" }),
    fc.constant<FanBetweenCalls>({ kind: "off" }),
    fc.record({ kind: fc.constant("runs on" as const), runOnS: mostly(0, 3_600) }),
  ),
});

describe("random inputs", () => {
  it("latentRatio and its companions", () => {
    let answered = 0;
    fc.assert(
      fc.property(partLoad, (input) => {
        const found = attempt(() => latentRatio(input));
        if (found === null) return;
        answered += 1;
        expect(found.latentRatio).toBeGreaterThanOrEqual(0);
        expect(found.latentRatio).toBeLessThanOrEqual(1);
        // Never to net drying within a call: nothing is kept.
        if (
          found.netDryingAfterS !== null &&
          found.onTimeS !== null &&
          found.netDryingAfterS >= found.onTimeS
        ) {
          expect(found.latentRatio).toBe(0);
        }
      }),
      RUNS,
    );
    expect(answered).toBeGreaterThan(RUNS.numRuns / 2);
    fc.assert(
      fc.property(
        mostly(0, 1),
        mostly(0, 1),
        mostly(1, 5_000),
        mostly(0, 20),
        wild,
        wild,
        (a, b, c, d, e, f) => {
          const ratio = attempt(() => effectiveSensibleRatio(a, b));
          if (ratio !== null) expect(ratio).toBeGreaterThanOrEqual(a - 1e-12);
          attempt(() =>
            wetCoilAtConditions({
              ratedWetTimeS: c,
              ratedGamma: d,
              ratedLatentBtuh: e,
              latentBtuh: f,
              ratedDepressionF: d,
              depressionF: d,
            }),
          );
        },
      ),
      RUNS,
    );
  });

  it("balance, need and findings", () => {
    const limits = seedLimits(moistureLimits);
    fc.assert(
      fc.property(condition, fc.option(partLoad), (given, part) => {
        const balance = attempt(() => moistureBalance(given));
        if (balance !== null) {
          const sum = balance.householdLbPerH + balance.outdoorAirLbPerH - balance.removalLbPerH;
          expect(balance.netLbPerH).toBeCloseTo(sum, 9);
          expect(balance.missingPintsPerDay).toBeGreaterThanOrEqual(0);
        }
        attempt(() => supplementalNeed(given));
        const found = attempt(() =>
          moistureFindings({ design: given, wetMild: given, partLoad: part }, limits),
        );
        for (const one of found ?? []) expect(one.statement).not.toMatch(/NaN|Infinity|undefined/);
      }),
      RUNS,
    );
  });

  it("sources, removal, buffer, units", () => {
    fc.assert(
      fc.property(
        air,
        air,
        household,
        mostly(0, 2_000),
        mostly(0.5, 1.1),
        wild,
        (one, other, sources, flow, ratio, any) => {
          const inside = attempt(() => householdMoistureLbPerH(sources));
          if (inside !== null) expect(inside).toBeGreaterThanOrEqual(0);
          attempt(() => outdoorAirMoistureLbPerH({ outdoorAirCfm: flow, outdoor: one, indoor: other }));
          attempt(() =>
            moistureRemoval({ airflowCfm: flow, entering: one, leaving: other, densityRatio: ratio }),
          );
          attempt(() =>
            bufferedMoistureLb({ volumeFt3: flow * 10, capacitanceMultiple: any, from: one, to: other }),
          );
          attempt(() =>
            bufferTimeConstant({ volumeFt3: flow * 10, capacitanceMultiple: 10, airExchangeCfm: any }),
          );
          for (const convert of [
            gallonsPerHour,
            pintsPerDay,
            lbPerHFromPintsPerDay,
            lbPerHFromGallonsPerHour,
          ]) {
            attempt(() => convert(any));
            attempt(() => convert(flow));
          }
        },
      ),
      RUNS,
    );
  });

  it("dehumidifier", () => {
    const point = fc.record({
      dryBulbF: fc.oneof(
        { weight: 20, arbitrary: fc.constantFrom(65, 73, 80) },
        { weight: 1, arbitrary: wild },
      ),
      relativeHumidityPct: fc.oneof(
        { weight: 20, arbitrary: fc.constantFrom(50, 60) },
        { weight: 1, arbitrary: wild },
      ),
      pintsPerDay: mostly(20, 130),
      powerW: mostly(200, 900),
    });
    let answered = 0;
    fc.assert(
      fc.property(
        fc.array(point, { maxLength: 6 }),
        mostly(60, 82),
        mostly(45, 65),
        (points, dryBulbF, rh) => {
          const found = attempt(() => dehumidifierAt(points, dryBulbF, rh));
          attempt(() => dehumidifierHeatBtuh(dryBulbF, rh));
          if (found === null) return;
          answered += 1;
          expect(found.pintsPerDay).toBeLessThanOrEqual(Math.max(...points.map((p) => p.pintsPerDay)) + 1e-9);
          expect(found.heatAddedBtuh).toBeGreaterThan(found.powerW * 3.4);
        },
      ),
      RUNS,
    );
    expect(answered).toBeGreaterThan(0);
  });
});

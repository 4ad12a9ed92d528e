import fc from "fast-check";
import { describe, expect } from "vitest";
import { type MoistAir, moistAir } from "@/lib/engineering/air";
import { seedLimits } from "@/lib/engineering/limit-definition";
import type { FanBetweenCalls } from "@/lib/engineering/moisture";
import * as moisture from "@/lib/engineering/moisture";
import {
  everyFunctionTried,
  lawful,
  RANDOM_RUNS,
  randomTest,
  runs,
  tried,
} from "../../support/random-inputs";

const {
  waterFromLatent,
  bufferedMoistureLb,
  bufferTimeConstant,
  dehumidifierAt,
  dehumidifierHeatBtuh,
  effectiveSensibleRatio,
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
} = tried(moisture);

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
  randomTest("latentRatio and its companions", () => {
    let answered = 0;
    fc.assert(
      fc.property(partLoad, (input) => {
        const found = lawful(() => latentRatio(input));
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
      runs(20261125),
    );
    expect(answered).toBeGreaterThan(RANDOM_RUNS / 2);
    fc.assert(
      fc.property(
        mostly(0, 1),
        mostly(0, 1),
        mostly(1, 5_000),
        mostly(0, 20),
        mostly(1_000, 20_000),
        mostly(1_000, 20_000),
        (a, b, c, d, e, f) => {
          const ratio = lawful(() => effectiveSensibleRatio(a, b));
          if (ratio !== null) expect(ratio).toBeGreaterThanOrEqual(a - 1e-12);
          lawful(() =>
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
      runs(20261125),
    );
  });

  randomTest("balance, need and findings", () => {
    const limits = seedLimits(moistureLimits);
    fc.assert(
      fc.property(condition, fc.option(partLoad), (given, part) => {
        const balance = lawful(() => moistureBalance(given));
        if (balance !== null) {
          const sum = balance.householdLbPerH + balance.outdoorAirLbPerH - balance.removalLbPerH;
          expect(balance.netLbPerH).toBeCloseTo(sum, 9);
          expect(balance.missingPintsPerDay).toBeGreaterThanOrEqual(0);
        }
        lawful(() => supplementalNeed(given));
        const found = lawful(() =>
          moistureFindings({ design: given, wetMild: given, partLoad: part }, limits),
        );
        for (const one of found ?? []) expect(one.statement).not.toMatch(/NaN|Infinity|undefined/);
      }),
      runs(20261125),
    );
  });

  randomTest("sources, removal, buffer, units", () => {
    fc.assert(
      fc.property(
        air,
        air,
        household,
        mostly(0, 2_000),
        mostly(0.5, 1.1),
        wild,
        (one, other, sources, flow, ratio, any) => {
          const inside = lawful(() => householdMoistureLbPerH(sources));
          if (inside !== null) expect(inside).toBeGreaterThanOrEqual(0);
          lawful(() => outdoorAirMoistureLbPerH({ outdoorAirCfm: flow, outdoor: one, indoor: other }));
          lawful(() =>
            moistureRemoval({ airflowCfm: flow, entering: one, leaving: other, densityRatio: ratio }),
          );
          lawful(() =>
            bufferedMoistureLb({
              volumeFt3: flow * 10,
              capacitanceMultiple: ratio * 10,
              from: one,
              to: other,
            }),
          );
          lawful(() =>
            bufferTimeConstant({ volumeFt3: flow * 10, capacitanceMultiple: 10, airExchangeCfm: flow }),
          );
          lawful(() => waterFromLatent(any, one.dryBulbF));
          lawful(() => waterFromLatent(flow * 20, one.dryBulbF));
          for (const convert of [
            gallonsPerHour,
            pintsPerDay,
            lbPerHFromPintsPerDay,
            lbPerHFromGallonsPerHour,
          ]) {
            lawful(() => convert(any));
            lawful(() => convert(flow));
          }
        },
      ),
      runs(20261125),
    );
  });

  randomTest("dehumidifier", () => {
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
    // The maker's data as they should be: every humidity at every temperature.
    const grid = fc
      .array(fc.record({ pintsPerDay: mostly(20, 130), powerW: mostly(200, 900) }), {
        minLength: 6,
        maxLength: 6,
      })
      .map((rows) =>
        rows.map((row, index) => ({
          ...row,
          dryBulbF: [60, 73, 85][index % 3] ?? 60,
          relativeHumidityPct: index < 3 ? 40 : 70,
        })),
      );
    let answered = 0;
    fc.assert(
      fc.property(
        fc.oneof({ weight: 2, arbitrary: grid }, { weight: 1, arbitrary: fc.array(point, { maxLength: 6 }) }),
        mostly(60, 82),
        mostly(45, 65),
        (points, dryBulbF, rh) => {
          const found = lawful(() => dehumidifierAt(points, dryBulbF, rh));
          lawful(() => dehumidifierHeatBtuh(dryBulbF, rh));
          if (found === null) return;
          answered += 1;
          expect(found.pintsPerDay).toBeLessThanOrEqual(Math.max(...points.map((p) => p.pintsPerDay)) + 1e-9);
          expect(found.heatAddedBtuh).toBeGreaterThan(found.powerW * 3.4);
        },
      ),
      runs(20261125),
    );
    expect(answered).toBeGreaterThan(0);
  });
});

everyFunctionTried("moisture", moisture);

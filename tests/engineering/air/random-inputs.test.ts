import fc from "fast-check";
import { expect, test } from "vitest";
import {
  airSideCapacity,
  densityRatio,
  type MoistAirInput,
  mixAir,
  moistAir,
  quickLatentBtuh,
  quickMoistureLbPerH,
  quickSensibleBtuh,
  quickTotalBtuh,
  standardPressurePsia,
  waterSaturationPressurePsia,
} from "@/lib/engineering/air";
import { isEngineeringError } from "@/lib/engineering/errors";

const RUNS = Number(process.env.DEWLEDGER_RANDOM_RUNS ?? 2000);
/** Never a hang: 5 s and 1 ms for each run. */
const TIMEOUT_MS = 5_000 + RUNS;

const wild = fc.oneof(
  fc.double(),
  fc.constantFrom(Number.NaN, Number.POSITIVE_INFINITY, -0, 0, 31.9999999, 32, 32.018, 100, 1e-7, -1),
  fc.double({ min: -120, max: 250, noNaN: true }),
);
const near = (min: number, max: number) =>
  fc.oneof({ weight: 6, arbitrary: fc.double({ min, max, noNaN: true }) }, { weight: 1, arbitrary: wild });

const airInput = fc
  .record({
    dryBulbF: near(30, 150),
    pressurePsia: near(6, 17),
    field: fc.constantFrom("relativeHumidityPct", "wetBulbF", "dewPointF", "humidityRatio"),
    percentOrTemp: near(0, 100),
    ratio: near(0, 0.05),
  })
  .map(({ dryBulbF, pressurePsia, field, percentOrTemp, ratio }) => ({
    dryBulbF,
    pressurePsia,
    [field]: field === "humidityRatio" ? ratio : percentOrTemp,
  })) as unknown as fc.Arbitrary<MoistAirInput>;

function numbersIn(value: unknown): number[] {
  if (typeof value === "number") return [value];
  if (value !== null && typeof value === "object") return Object.values(value).flatMap(numbersIn);
  return [];
}

/** The result, or null after a typed refusal. Anything else fails the test. */
function lawful<T>(call: () => T): T | null {
  try {
    const result = call();
    for (const number of numbersIn(result)) expect(Number.isFinite(number)).toBe(true);
    return result;
  } catch (error) {
    if (isEngineeringError(error)) return null;
    throw error;
  }
}

test("moistAir, mixAir and airSideCapacity answer lawfully or refuse", { timeout: TIMEOUT_MS }, () => {
  let answered = 0;
  fc.assert(
    fc.property(airInput, airInput, near(0, 5_000), near(0, 5_000), (one, other, oneCfm, otherCfm) => {
      const a = lawful(() => moistAir(one));
      const b = lawful(() => moistAir({ ...other, pressurePsia: one.pressurePsia }));
      for (const air of [a, b]) {
        if (air === null) continue;
        answered += 1;
        expect(air.humidityRatio).toBeGreaterThan(0);
        expect(air.relativeHumidityPct).toBeLessThanOrEqual(100);
        expect(air.dewPointF).toBeLessThanOrEqual(air.dryBulbF);
        expect(air.wetBulbF).toBeLessThanOrEqual(air.dryBulbF);
      }
      if (a === null || b === null) return;
      const mixed = lawful(() =>
        mixAir([
          { airflowCfm: oneCfm, air: a },
          { airflowCfm: otherCfm, air: b },
        ]),
      );
      if (mixed !== null) {
        expect(mixed.humidityRatio).toBeLessThanOrEqual(
          Math.max(a.humidityRatio, b.humidityRatio) * (1 + 1e-12),
        );
      }
      const coil = lawful(() => airSideCapacity({ airflowCfm: oneCfm, entering: a, leaving: b }));
      if (coil !== null) expect(coil.sensibleBtuh + coil.latentBtuh - coil.totalBtuh).toBeCloseTo(0, 3);
    }),
    { seed: 41, numRuns: RUNS },
  );
  // The generator must not turn into one that only tests refusals.
  expect(answered).toBeGreaterThan(RUNS / 4);
});

test("atmosphere, saturation and quick checks answer lawfully or refuse", { timeout: TIMEOUT_MS }, () => {
  fc.assert(
    fc.property(
      near(-2_000, 20_000),
      near(-148, 392),
      near(0, 5_000),
      near(0.4, 1.2),
      (z, t, flow, density) => {
        lawful(() => standardPressurePsia(z));
        lawful(() => densityRatio(z));
        lawful(() => waterSaturationPressurePsia(t));
        lawful(() =>
          quickSensibleBtuh({ airflowCfm: flow, temperatureDifferenceF: t, densityRatio: density }),
        );
        lawful(() =>
          quickTotalBtuh({ airflowCfm: flow, enthalpyDifferenceBtuPerLb: t, densityRatio: density }),
        );
        lawful(() =>
          quickLatentBtuh({ airflowCfm: flow, moistureDifferenceGrainsPerLb: t, densityRatio: density }),
        );
        lawful(() =>
          quickMoistureLbPerH({ airflowCfm: flow, moistureDifferenceGrainsPerLb: t, densityRatio: density }),
        );
      },
    ),
    { seed: 42, numRuns: RUNS },
  );
});

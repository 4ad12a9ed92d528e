import fc from "fast-check";
import { expect } from "vitest";
import type { MoistAirInput } from "@/lib/engineering/air";
import * as air from "@/lib/engineering/air";
import {
  everyFunctionTried,
  lawful,
  RANDOM_RUNS as RUNS,
  randomTest,
  runs,
  tried,
} from "../../support/random-inputs";

const {
  requireSamePressure,
  airSideCapacity,
  densityRatio,
  mixAir,
  moistAir,
  quickLatentBtuh,
  quickMoistureLbPerH,
  quickSensibleBtuh,
  quickTotalBtuh,
  standardPressurePsia,
  waterSaturationPressurePsia,
} = tried(air);

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

randomTest("moistAir, mixAir and airSideCapacity answer lawfully or refuse", () => {
  let answered = 0;
  fc.assert(
    fc.property(airInput, airInput, (one, other) => {
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
    }),
    runs(41),
  );
  // The generator must not turn into one that only tests refusals.
  expect(answered).toBeGreaterThan(RUNS / 4);
});

randomTest("mixAir, airSideCapacity and requireSamePressure answer lawfully or refuse", () => {
  const state = fc
    .record({
      dryBulbF: fc.double({ min: -20, max: 120, noNaN: true }),
      relativeHumidityPct: fc.double({ min: 1, max: 100, noNaN: true }),
      pressurePsia: fc.oneof(
        { weight: 8, arbitrary: fc.constant(14.696) },
        { weight: 1, arbitrary: fc.constant(12.2) },
      ),
    })
    .map(moistAir);
  fc.assert(
    fc.property(state, state, near(0, 5_000), near(0, 5_000), (a, b, oneCfm, otherCfm) => {
      lawful(() => requireSamePressure(a, b, ["one", "other"]));
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
    runs(43),
  );
});

randomTest("atmosphere, saturation and quick checks answer lawfully or refuse", () => {
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
    runs(42),
  );
});

everyFunctionTried("air", air);

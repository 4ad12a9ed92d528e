import fc from "fast-check";
import { describe, expect } from "vitest";
import { type MoistAir, moistAir } from "@/lib/engineering/air";
import type { EquipmentKind, PerformancePoint } from "@/lib/engineering/equipment";
import * as equipment from "@/lib/engineering/equipment";
import { seedLimits } from "@/lib/engineering/limit-definition";
import {
  everyFunctionTried,
  firstUnlawful,
  lawful,
  RANDOM_RUNS,
  randomTest,
  runs,
  tried,
} from "../../support/random-inputs";
import { SYSTEM } from "./fixtures";

const {
  coilConstants,
  heatingFindings,
  ratedLeavingAir,
  coilAtFlow,
  coilNumbers,
  solveCoil,
  solveCoilAtCapacity,
  airAfterCoil,
  auxiliaryHeatKw,
  balancePoint,
  bypassFactorAt,
  capacityCeilingBtuh,
  capacityMap,
  coilFromRating,
  coilTemperatureHeld,
  coolingRatios,
  equipmentLimits,
  humidityCapability,
  judgeFit,
  performanceAt,
  ratedApproachF,
  sizingFindings,
  stageDropTransient,
} = tried(equipment, ["solveCoilAtCapacity"]);

/*
 * Wild input of every kind: the answer obeys the laws or is a typed refusal. Never a NaN, never a foreign error, never a hang.
 */
const limits = seedLimits(equipmentLimits);

const wild = fc.oneof(
  fc.constantFrom(Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 0, -0, -1, 1e300, 5e-324),
  fc.double(),
);
/** Mostly plausible, so that most runs get past the door, and now and then anything. */
function mostly(min: number, max: number): fc.Arbitrary<number> {
  return fc.oneof(
    { weight: 30, arbitrary: fc.double({ min, max, noNaN: true }) },
    { weight: 1, arbitrary: wild },
  );
}
const orNull = (arbitrary: fc.Arbitrary<number>) => fc.option(arbitrary, { freq: 15 });

const air: fc.Arbitrary<MoistAir> = fc
  .record({
    dryBulbF: fc.double({ min: 35, max: 130, noNaN: true }),
    relativeHumidityPct: fc.double({ min: 0.5, max: 100, noNaN: true }),
    pressurePsia: fc.double({ min: 9, max: 15.5, noNaN: true }),
  })
  .map(moistAir);

const system = fc.record({
  a0LbPerH: mostly(100, 40_000),
  approach: fc.oneof(
    fc.record({ kind: fc.constant("fixed" as const), approachF: mostly(0, 40) }),
    fc.record({
      kind: fc.constant("grows with capacity" as const),
      ratedApproachF: mostly(0, 40),
      ratedTotalBtuh: mostly(1_000, 100_000),
    }),
  ),
  heldTemperatureF: mostly(20, 70),
  capacityCeilingBtuh: mostly(10_000, 100_000),
  minimumCapacityBtuh: mostly(0, 20_000),
  frostLimitF: mostly(20, 60),
});

describe("random inputs", () => {
  randomTest("coilTemperatureHeld", () => {
    let answered = 0;
    fc.assert(
      fc.property(air, mostly(50, 3_000), system, (entering, airflowCfm, settings) => {
        const state = lawful(() => coilTemperatureHeld({ entering, airflowCfm, system: settings }));
        if (state === null) return;
        answered += 1;
        expect(state.totalBtuh).toBeGreaterThanOrEqual(0);
        expect(state.totalBtuh).toBeLessThanOrEqual(settings.capacityCeilingBtuh);
        expect(state.moistureLbPerH).toBeGreaterThanOrEqual(0);
        expect(state.leavingDbF).toBeLessThanOrEqual(entering.dryBulbF + 1e-9);
        expect(state.adpF).toBeGreaterThanOrEqual(settings.frostLimitF - 1e-9);
        expect(state.compressorShare).toBeGreaterThanOrEqual(0);
        expect(state.compressorShare).toBeLessThanOrEqual(1);
        expect(state.cycling).toBe(state.totalBtuh < settings.minimumCapacityBtuh);
      }),
      runs(20261125),
    );
    expect(answered).toBeGreaterThan(RANDOM_RUNS / 4);
  });

  randomTest("airAfterCoil", () => {
    fc.assert(
      fc.property(
        air,
        mostly(200, 3_000),
        mostly(5_000, 80_000),
        mostly(0, 20),
        (entering, airflowCfm, totalBtuh, moistureLbPerH) => {
          const leaving = lawful(() => airAfterCoil({ entering, airflowCfm, totalBtuh, moistureLbPerH }));
          if (leaving === null) return;
          expect(leaving.dewPointF).toBeLessThanOrEqual(leaving.dryBulbF + 1e-6);
          expect(leaving.humidityRatio).toBeLessThanOrEqual(entering.humidityRatio);
          expect(leaving.enthalpyBtuPerLb).toBeLessThan(entering.enthalpyBtuPerLb + 1e-9);
        },
      ),
      runs(20261126),
    );
  });

  randomTest("coilFromRating, bypassFactorAt, ratedApproachF", () => {
    let answered = 0;
    fc.assert(
      fc.property(
        air,
        mostly(200, 3_000),
        mostly(5_000, 80_000),
        mostly(0.5, 1),
        (entering, airflowCfm, totalBtuh, sensibleRatio) => {
          const coil = lawful(() => coilFromRating({ entering, airflowCfm, totalBtuh, sensibleRatio }));
          if (coil === null) return;
          answered += 1;
          expect(coil.bypassFactor).toBeGreaterThan(0);
          expect(coil.bypassFactor).toBeLessThan(1);
          expect(coil.adpF).toBeLessThan(coil.leavingDbF);
          expect(coil.leavingDbF).toBeLessThan(entering.dryBulbF);
        },
      ),
      runs(20261125),
    );
    expect(answered).toBeGreaterThan(RANDOM_RUNS / 20);
    fc.assert(
      fc.property(mostly(100, 50_000), mostly(100, 50_000), mostly(30, 60), mostly(20, 60), (a, b, c, d) => {
        lawful(() => bypassFactorAt(a, b));
        lawful(() => ratedApproachF({ adpF: c, evaporatingF: d }));
        lawful(() => auxiliaryHeatKw(a, b));
      }),
      runs(20261125),
    );
  });

  randomTest("performanceAt", () => {
    const axis = (values: readonly number[]) =>
      fc.oneof({ weight: 30, arbitrary: fc.constantFrom(...values) }, { weight: 1, arbitrary: wild });
    const point: fc.Arbitrary<PerformancePoint> = fc.record({
      outdoorDbF: axis([85, 95, 105]),
      enteringWbF: axis([63, 67]),
      enteringDbF: axis([75, 80]),
      airflowCfm: axis([1_000, 1_200]),
      totalBtuh: mostly(20_000, 40_000),
      sensibleBtuh: mostly(10_000, 20_000),
      powerW: orNull(mostly(1_000, 4_000)),
    });
    const table = fc.uniqueArray(point, {
      maxLength: 24,
      selector: (p) => [p.outdoorDbF, p.enteringWbF, p.enteringDbF, p.airflowCfm].join(),
    });
    let answered = 0;
    fc.assert(
      fc.property(
        table,
        mostly(85, 105),
        mostly(63, 67),
        mostly(75, 80),
        mostly(1_000, 1_200),
        (lines, o, w, d, c) => {
          const found = lawful(() =>
            performanceAt(lines, { outdoorDbF: o, enteringWbF: w, enteringDbF: d, airflowCfm: c }),
          );
          if (found === null) return;
          answered += 1;
          expect(found.sensibleBtuh).toBeLessThanOrEqual(found.totalBtuh);
          const totals = found.pointsUsed.map((used) => used.point.totalBtuh);
          expect(found.totalBtuh).toBeGreaterThanOrEqual(Math.min(...totals) - 1e-6);
          expect(found.totalBtuh).toBeLessThanOrEqual(Math.max(...totals) + 1e-6);
        },
      ),
      runs(20261125),
    );
    expect(answered).toBeGreaterThan(0);
  });

  randomTest("sizingFindings and coolingRatios", () => {
    fc.assert(
      fc.property(
        fc.record({
          kind: fc.constantFrom<EquipmentKind>("single speed", "two-stage", "variable speed"),
          heatPump: fc.boolean(),
          edition: fc.oneof(
            fc.constant({ name: "Manual S-2014" as const }),
            fc.record({
              name: fc.constant("later edition" as const),
              totalMaxRatio: orNull(mostly(1, 3)),
              leastCapacityMaxRatio: orNull(mostly(0.1, 1)),
            }),
          ),
          sensibleLoadBtuh: orNull(mostly(5_000, 50_000)),
          latentLoadBtuh: orNull(mostly(0, 20_000)),
          totalCapacityBtuh: orNull(mostly(30_000, 60_000)),
          sensibleCapacityBtuh: orNull(mostly(0, 30_000)),
          leastCapacityBtuh: orNull(mostly(0, 20_000)),
          heatingDegreeDays65: orNull(mostly(0, 9_000)),
          coolingDegreeDays50: orNull(mostly(0, 9_000)),
        }),
        (input) => {
          const found = lawful(() => sizingFindings(input, limits));
          for (const one of found ?? []) {
            expect(one.statement).not.toMatch(/NaN|Infinity|undefined/);
            if (one.ruleId === "equipment.latent-warning") expect(one.binding).toBe(false);
          }
        },
      ),
      runs(20261125),
    );
    fc.assert(
      fc.property(mostly(500, 9e4), mostly(0, 9e4), mostly(5e4, 9e4), mostly(0, 5e4), (s, l, t, c) => {
        const found = lawful(() =>
          coolingRatios({
            sensibleLoadBtuh: s,
            latentLoadBtuh: l,
            totalCapacityBtuh: t,
            sensibleCapacityBtuh: c,
          }),
        );
        if (found === null) return;
        expect(found.adjustedSensibleBtuh + found.adjustedLatentBtuh).toBeCloseTo(t, 6);
        for (const frostBoundAdpF of [null, 32]) {
          const fit = judgeFit({ ratios: found, frostBoundAdpF, kind: "two-stage", limits });
          expect(fit.fit === "coil too cold").toBe(frostBoundAdpF !== null);
        }
      }),
      runs(20261125),
    );
  });

  randomTest("balancePoint and capacityCeilingBtuh", () => {
    fc.assert(
      fc.property(
        mostly(5_000, 50_000),
        mostly(20_000, 90_000),
        mostly(5_000, 90_000),
        mostly(-20, 40),
        mostly(55, 75),
        (capacityAt17FBtuh, capacityAt47FBtuh, designLoadBtuh, designF, zeroLoadF) => {
          const found = lawful(() =>
            balancePoint({ capacityAt17FBtuh, capacityAt47FBtuh, designLoadBtuh, designF, zeroLoadF }),
          );
          if (found !== null) expect(found.balancePointF).toBeLessThanOrEqual(zeroLoadF);
        },
      ),
      runs(20261125),
    );
    const points = fc.array(
      fc.record({ outdoorDbF: mostly(60, 120), capacityBtuh: mostly(10_000, 60_000) }),
      {
        maxLength: 3,
      },
    );
    fc.assert(
      fc.property(points, mostly(60, 120), mostly(10, 100), (given, outdoorDbF, pct) => {
        const found = lawful(() => capacityCeilingBtuh(given, outdoorDbF, pct));
        if (found !== null) expect(found).toBeLessThanOrEqual(Math.max(...given.map((p) => p.capacityBtuh)));
      }),
      runs(20261125),
    );
  });

  randomTest("capacityMap, stageDropTransient, humidityCapability", () => {
    const few = runs(20261125, 1 / 10);
    fc.assert(
      fc.property(
        air,
        system,
        mostly(300, 1_500),
        mostly(300, 900),
        mostly(5_000, 40_000),
        mostly(0, 9_000),
        (entering, settings, before, after, sensible, latent) => {
          lawful(() =>
            capacityMap({
              entering,
              coil: settings,
              airflowSettings: [{ label: "a", airflowCfm: before }],
              capacitySettings: [{ label: "c", ...settings }],
              sensibleLoadBtuh: sensible,
              latentLoadBtuh: latent,
              kind: "variable speed",
              limits,
            }),
          );
          const drop = lawful(() =>
            stageDropTransient({
              entering,
              system: settings,
              airflowBeforeCfm: before,
              airflowAfterCfm: after,
              settlingMinutes: 15,
              shape: "first-order",
              minutes: 20,
            }),
          );
          for (const minute of drop?.minutes ?? []) expect(minute.totalBtuh).toBeGreaterThan(0);
        },
      ),
      few,
    );
    fc.assert(
      fc.property(
        mostly(60, 90),
        mostly(9, 15),
        mostly(300, 1_500),
        system,
        mostly(100, 40_000),
        mostly(0, 9_000),
        (indoorDbF, pressurePsia, airflowCfm, settings, sensibleLoadBtuh, latentLoadBtuh) => {
          lawful(() =>
            humidityCapability({
              indoorDbF,
              pressurePsia,
              airflowCfm,
              system: { ...settings, a0LbPerH: SYSTEM.a0LbPerH },
              sensibleLoadBtuh,
              latentLoadBtuh,
            }),
          );
        },
      ),
      few,
    );
  });
});

randomTest("the numeric core, after its checked door", () => {
  const flow = fc.double({ min: 200, max: 15_000, noNaN: true });
  const capacity = fc.double({ min: 1_000, max: 100_000, noNaN: true });
  const { COIL } = equipment;
  fc.assert(
    fc.property(air, system, flow, capacity, (entering, settings, dryAirLbPerH, wanted) => {
      const constants = lawful(() => coilConstants(settings, entering));
      if (constants === null) return;
      const coil = coilAtFlow(constants, dryAirLbPerH);
      const out = coilNumbers(entering.pressurePsia);
      out[COIL.enteringDbF] = entering.dryBulbF;
      out[COIL.enteringHumidityRatio] = entering.humidityRatio;
      out[COIL.ceilingBtuh] = settings.capacityCeilingBtuh;
      out[COIL.minimumBtuh] = settings.minimumCapacityBtuh;
      solveCoil(coil, out);
      expect(firstUnlawful(out)).toBeNull();
      expect(out[COIL.adpF]).toBeGreaterThanOrEqual(settings.frostLimitF - 1e-9);
      out[COIL.ceilingBtuh] = wanted;
      const before = Float64Array.from(out);
      // No surface above the frost limit takes that much: told apart, and nothing is written.
      if (!solveCoilAtCapacity(coil, out)) expect(out).toEqual(before);
      else expect(firstUnlawful(out)).toBeNull();
    }),
    runs(20261126, 1, 3),
  );
});

randomTest("ratedLeavingAir of plausible coils", () => {
  const entering = fc
    .record({
      dryBulbF: fc.double({ min: 74, max: 82, noNaN: true }),
      relativeHumidityPct: fc.double({ min: 48, max: 55, noNaN: true }),
      pressurePsia: fc.constantFrom(14.696, 13.5),
    })
    .map(moistAir);
  fc.assert(
    fc.property(
      entering,
      fc.double({ min: 380, max: 450, noNaN: true }),
      mostly(12_000, 60_000),
      fc.double({ min: 0.72, max: 0.78, noNaN: true }),
      (air, cfmPerTon, totalBtuh, sensibleRatio) => {
        const airflowCfm = (cfmPerTon * totalBtuh) / 12_000;
        const coil = lawful(() => coilFromRating({ entering: air, airflowCfm, totalBtuh, sensibleRatio }));
        if (coil === null) return;
        const leaving = ratedLeavingAir(coil, air);
        expect(leaving.enthalpyBtuPerLb).toBeLessThan(air.enthalpyBtuPerLb);
        expect(leaving.humidityRatio).toBeLessThan(air.humidityRatio);
      },
    ),
    runs(20261128, 1, 2),
  );
});

randomTest("heatingFindings", () => {
  fc.assert(
    fc.property(
      fc.record({
        capacityAt17FBtuh: orNull(mostly(5_000, 50_000)),
        capacityAt47FBtuh: orNull(mostly(20_000, 90_000)),
        designLoadBtuh: orNull(mostly(5_000, 90_000)),
        designF: orNull(mostly(-20, 40)),
        zeroLoadF: orNull(mostly(55, 75)),
      }),
      orNull(mostly(0, 20)),
      (lines, installed) => {
        lawful(() => heatingFindings(lines, installed));
      },
    ),
    runs(20261127),
  );
});

everyFunctionTried("equipment", equipment);

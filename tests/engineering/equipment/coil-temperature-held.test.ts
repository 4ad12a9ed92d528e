import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { airSideCapacity, moistAir } from "@/lib/engineering/air";
import {
  bypassFactorAt,
  type CoilState,
  type CoilTemperatureHeldSystem,
  capacityCeilingBtuh,
  coilTemperatureHeld,
} from "@/lib/engineering/equipment";
import { ImpossibleStateError, OutOfRangeError } from "@/lib/engineering/errors";
import { indoorAir, RATING_AIR, SEA_LEVEL_PSIA, SYSTEM, THREE_TON_COIL } from "./fixtures";

const SOURCE = "EnergyPlus Engineering Reference for BF and A0 (published); balances (physics)";
const RUNS = { seed: 20261125, numRuns: 400 };

function run(
  airflowCfm: number,
  change: Partial<CoilTemperatureHeldSystem> = {},
  entering = indoorAir(75, 50),
): CoilState {
  return coilTemperatureHeld({ entering, airflowCfm, system: { ...SYSTEM, ...change } });
}

describe(`coilTemperatureHeld, ${SOURCE}`, () => {
  it("gives the rated point back at the rated airflow and held temperature", () => {
    const state = run(1_200, { capacityCeilingBtuh: 40_000 }, RATING_AIR);
    expect(state.limitedBy).toBe("held temperature");
    expect(state.totalBtuh).toBeCloseTo(36_000, 0);
    expect(state.sensibleRatio).toBeCloseTo(0.75, 6);
    expect(state.adpF).toBeCloseTo(THREE_TON_COIL.adpF, 4);
    expect(state.evaporatingTemperatureF).toBeCloseTo(45, 6);
    expect(state.cycling).toBe(false);
  });

  it("agrees with a hand calculation at a fixed approach", () => {
    // 75 °F 50 %, 800 cfm, held 45 °F, approach 7 °F: surface 52 °F saturated; BF from A0 / m.
    const entering = indoorAir(75, 50);
    const state = run(800, { approach: { kind: "fixed", approachF: 7 } }, entering);
    const surface = moistAir({ dryBulbF: 52, relativeHumidityPct: 100, pressurePsia: SEA_LEVEL_PSIA });
    const dryAir = (800 * 60) / entering.specificVolumeFt3PerLb;
    const contact = 1 - Math.exp(-SYSTEM.a0LbPerH / dryAir);
    const total = dryAir * contact * (entering.enthalpyBtuPerLb - surface.enthalpyBtuPerLb);
    const water = dryAir * contact * (entering.humidityRatio - surface.humidityRatio);
    expect(state.adpF).toBeCloseTo(52, 9);
    expect(Math.abs(state.totalBtuh - total)).toBeLessThan(0.1);
    expect(Math.abs(state.moistureLbPerH - water)).toBeLessThan(1e-4);
    expect(state.latentBtuh).toBeCloseTo(water * (1_061 + 0.444 * 75), 0);
  });

  it("floats the coil up to the capacity ceiling", () => {
    const state = run(1_200, { capacityCeilingBtuh: 24_000, heldTemperatureF: 40 });
    expect(state.limitedBy).toBe("capacity ceiling");
    expect(state.totalBtuh).toBe(24_000);
    expect(state.evaporatingTemperatureF).toBeGreaterThan(40);
  });

  it("floats the coil down to the minimum capacity, then stops at the frost limit and cycles", () => {
    const atMinimum = run(450, { minimumCapacityBtuh: 16_000, heldTemperatureF: 50 });
    expect(atMinimum.limitedBy).toBe("minimum capacity");
    expect(atMinimum.totalBtuh).toBe(16_000);
    expect(atMinimum.evaporatingTemperatureF).toBeLessThan(50);
    expect(atMinimum.cycling).toBe(false);

    const atFrost = run(180, { minimumCapacityBtuh: 16_000, heldTemperatureF: 50 });
    expect(atFrost.limitedBy).toBe("frost limit");
    expect(atFrost.adpF).toBe(32);
    expect(atFrost.totalBtuh).toBeLessThan(16_000);
    expect(atFrost.cycling).toBe(true);
    expect(atFrost.compressorShare).toBeCloseTo(atFrost.totalBtuh / 16_000, 12);
    // While it runs it gives the minimum, so the refrigerant is colder by the approach of 16,000 Btu/h, not of the mean.
    expect(atFrost.evaporatingTemperatureF).toBeCloseTo(
      32 - ((THREE_TON_COIL.adpF - 45) * 16_000) / 36_000,
      6,
    );
  });

  it("does not follow a held temperature that would take the surface below the frost limit", () => {
    const state = run(700, {
      heldTemperatureF: 26,
      approach: { kind: "fixed", approachF: 2 },
      capacityCeilingBtuh: 60_000,
    });
    expect(state.limitedBy).toBe("frost limit");
    expect(state.adpF).toBe(32);
    expect(state.cycling).toBe(false);
  });

  it("dry coil: surface above the entering dew point cools and takes no water", () => {
    const entering = indoorAir(78, 25); // dew point about 39 °F
    const state = run(900, { minimumCapacityBtuh: 0, approach: { kind: "fixed", approachF: 5 } }, entering);
    expect(entering.dewPointF).toBeLessThan(state.adpF);
    expect(state.dryCoil).toBe(true);
    expect(state.moistureLbPerH).toBe(0);
    expect(state.sensibleRatio).toBe(1);
    expect(state.leaving.humidityRatio).toBe(entering.humidityRatio);
    // Dry mixing of temperatures: t_out = t_in − (1 − BF)(t_in − ADP)
    expect(state.leavingDbF).toBeCloseTo(78 - (1 - state.bypassFactor) * (78 - 50), 9);
  });

  it("takes nothing when the surface would be warmer than the air and there is no minimum", () => {
    const state = run(900, {
      heldTemperatureF: 70,
      approach: { kind: "fixed", approachF: 10 },
      minimumCapacityBtuh: 0,
    });
    expect(state.totalBtuh).toBe(0);
    expect(state.sensibleRatio).toBeNull();
    expect(state.leavingDbF).toBeCloseTo(75, 9);
  });

  it("very humid air leaves saturated instead of as fog, and loses no energy in it", () => {
    const entering = indoorAir(75, 95);
    const state = run(500, { heldTemperatureF: 35, capacityCeilingBtuh: 60_000 }, entering);
    expect(state.leaving.relativeHumidityPct).toBe(100);
    const drop = state.dryAirLbPerH * (entering.enthalpyBtuPerLb - state.leaving.enthalpyBtuPerLb);
    expect(Math.abs(drop - state.totalBtuh)).toBeLessThan(0.1);
  });

  it("refuses what contradicts itself or lies outside", () => {
    expect(() => run(800, { minimumCapacityBtuh: 40_000 })).toThrow(ImpossibleStateError);
    expect(() => run(800, { frostLimitF: 55 }, indoorAir(50, 50))).toThrow(ImpossibleStateError);
    for (const change of [
      { a0LbPerH: 0 },
      { heldTemperatureF: Number.NaN },
      { capacityCeilingBtuh: 0 },
      { minimumCapacityBtuh: -1 },
      { frostLimitF: 70 },
      { approach: { kind: "fixed", approachF: -1 } } as const,
    ]) {
      expect(() => run(800, change)).toThrow(OutOfRangeError);
    }
    expect(() => run(0)).toThrow(/airflowCfm/);
  });
});

/** Indoor air from which drying gets easier as the coil gets colder: below the tangent to saturation the split turns round. */
const indoor = fc.record({
  dryBulbF: fc.double({ min: 68, max: 80, noNaN: true }),
  relativeHumidityPct: fc.double({ min: 40, max: 60, noNaN: true }),
});
const airflow = fc.double({ min: 350, max: 1_600, noNaN: true });
const held = fc.double({ min: 38, max: 52, noNaN: true });

/**
 * At the surface temperature where the line from the entering air is tangent to saturation the sensible ratio is lowest;
 * a still colder surface raises it again. Computed here from psychrolib by central difference.
 */
function aboveTangent(state: CoilState, entering: ReturnType<typeof indoorAir>): boolean {
  const w = (t: number): number =>
    moistAir({ dryBulbF: t, relativeHumidityPct: 100, pressurePsia: SEA_LEVEL_PSIA }).humidityRatio;
  const chord = (entering.humidityRatio - w(state.adpF)) / (entering.dryBulbF - state.adpF);
  return chord < (w(state.adpF + 0.01) - w(state.adpF - 0.01)) / 0.02;
}

describe("laws", () => {
  it("less airflow → not more total, not higher sensible ratio, colder leaving air, colder coil", () => {
    let compared = 0;
    fc.assert(
      fc.property(
        indoor,
        airflow,
        fc.double({ min: 0.5, max: 0.97, noNaN: true }),
        held,
        (air, cfm, share, heldTemperatureF) => {
          const entering = indoorAir(air.dryBulbF, air.relativeHumidityPct);
          const change = { heldTemperatureF, minimumCapacityBtuh: 0 };
          const more = run(cfm, change, entering);
          const less = run(Math.max(cfm * share, 100), change, entering);
          expect(less.totalBtuh).toBeLessThanOrEqual(more.totalBtuh + 1e-6);
          if (more.limitedBy === "held temperature") expect(less.totalBtuh).toBeLessThan(more.totalBtuh);
          expect(less.leavingDbF).toBeLessThan(more.leavingDbF);
          expect(less.adpF).toBeLessThanOrEqual(more.adpF + 1e-9);
          if (!more.dryCoil && aboveTangent(less, entering)) {
            compared += 1;
            expect(less.sensibleRatio ?? 1).toBeLessThan(more.sensibleRatio ?? 0);
          }
        },
      ),
      RUNS,
    );
    expect(compared).toBeGreaterThan(RUNS.numRuns / 2);
  });

  it("bigger coil at the same airflow → lower bypass factor and not less capacity", () => {
    fc.assert(
      fc.property(indoor, airflow, fc.double({ min: 1.05, max: 2, noNaN: true }), (air, cfm, factor) => {
        const entering = indoorAir(air.dryBulbF, air.relativeHumidityPct);
        const one = run(cfm, { minimumCapacityBtuh: 0 }, entering);
        const bigger = run(cfm, { minimumCapacityBtuh: 0, a0LbPerH: SYSTEM.a0LbPerH * factor }, entering);
        expect(bigger.bypassFactor).toBeLessThan(one.bypassFactor);
        expect(bigger.bypassFactor).toBeCloseTo(
          bypassFactorAt(SYSTEM.a0LbPerH * factor, one.dryAirLbPerH),
          12,
        );
        expect(bigger.totalBtuh).toBeGreaterThanOrEqual(one.totalBtuh - 1e-6);
      }),
      RUNS,
    );
  });

  it("colder held temperature → not less total, not less water, until the ceiling", () => {
    fc.assert(
      fc.property(
        indoor,
        airflow,
        held,
        fc.double({ min: 0.5, max: 5, noNaN: true }),
        (air, cfm, heldF, colder) => {
          const entering = indoorAir(air.dryBulbF, air.relativeHumidityPct);
          const one = run(cfm, { heldTemperatureF: heldF, minimumCapacityBtuh: 0 }, entering);
          const cold = run(cfm, { heldTemperatureF: heldF - colder, minimumCapacityBtuh: 0 }, entering);
          expect(cold.totalBtuh).toBeGreaterThanOrEqual(one.totalBtuh - 1e-6);
          expect(cold.moistureLbPerH).toBeGreaterThanOrEqual(one.moistureLbPerH - 1e-9);
        },
      ),
      RUNS,
    );
  });

  it("energy and water are conserved against the air-side balance of the two states", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 65, max: 95, noNaN: true }),
        fc.double({ min: 10, max: 99, noNaN: true }),
        airflow,
        held,
        fc.double({ min: 5_000, max: 50_000, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (db, rh, cfm, heldTemperatureF, capacityCeilingBtuh, share) => {
          const entering = indoorAir(db, rh);
          const state = run(
            cfm,
            { heldTemperatureF, capacityCeilingBtuh, minimumCapacityBtuh: share * capacityCeilingBtuh },
            entering,
          );
          const air = airSideCapacity({ airflowCfm: cfm, entering, leaving: state.leaving });
          expect(state.dryAirLbPerH).toBeCloseTo(air.dryAirLbPerH, 9);
          // 5e-7 of saturation pressure is 2e-5 Btu/lb times at most 7,000 lb/h where the air leaves saturated.
          expect(Math.abs(state.totalBtuh - (air.totalBtuh + air.condensateBtuh))).toBeLessThan(0.2);
          expect(Math.abs(state.moistureLbPerH - air.moistureLbPerH)).toBeLessThan(2e-4);
          expect(state.sensibleBtuh + state.latentBtuh).toBeCloseTo(state.totalBtuh, 6);
          // The two conventions of the split, exactly: see the docstring of coilTemperatureHeld.
          const cross = 0.444 * state.moistureLbPerH * (entering.dryBulbF - state.leavingDbF);
          expect(Math.abs(air.sensibleBtuh - state.sensibleBtuh - cross)).toBeLessThan(0.2);
        },
      ),
      RUNS,
    );
  });

  it("everything is continuous where the limits switch", () => {
    // Sweep each quantity in small steps across every switch; a jump would stand out against the mean step.
    const sweeps: readonly ((x: number) => CoilState)[] = [
      (x) =>
        run(300 + 1_200 * x, {
          heldTemperatureF: 42,
          capacityCeilingBtuh: 26_000,
          minimumCapacityBtuh: 15_000,
        }),
      (x) =>
        run(800, { heldTemperatureF: 30 + 25 * x, capacityCeilingBtuh: 27_000, minimumCapacityBtuh: 18_000 }),
      (x) => run(800, { minimumCapacityBtuh: 0 }, indoorAir(75, 20 + 70 * x)), // dry → wet → saturated leaving
      (x) => run(800, { capacityCeilingBtuh: 10_000 + 30_000 * x }),
      (x) => run(350, { minimumCapacityBtuh: 8_000 + 20_000 * x }),
    ];
    const seen = new Set<string>();
    const STEPS = 2_000;
    for (const sweep of sweeps) {
      const states = Array.from({ length: STEPS + 1 }, (_, index) => sweep(index / STEPS));
      for (const state of states) seen.add(state.limitedBy);
      for (const read of [
        (s: CoilState) => s.totalBtuh / 20_000,
        (s: CoilState) => s.sensibleBtuh / 20_000,
        (s: CoilState) => s.moistureLbPerH / 6,
        (s: CoilState) => s.adpF / 50,
        (s: CoilState) => s.leavingDbF / 50,
      ]) {
        const values = states.map(read);
        const jumps = values.slice(1).map((value, index) => Math.abs(value - (values[index] ?? Number.NaN)));
        // The widest sweep changes any of these by less than 2 over 2,000 steps: 0.001 a step on average.
        expect(Math.max(...jumps)).toBeLessThan(0.005);
      }
    }
    expect([...seen].sort()).toEqual([
      "capacity ceiling",
      "frost limit",
      "held temperature",
      "minimum capacity",
    ]);
  });

  it("warmer outdoors → not more capacity, through the ceiling", () => {
    const points = [
      { outdoorDbF: 75, capacityBtuh: 40_000 },
      { outdoorDbF: 95, capacityBtuh: 36_000 },
      { outdoorDbF: 115, capacityBtuh: 30_000 },
    ];
    const temperature = fc.double({ min: 75, max: 115, noNaN: true });
    fc.assert(
      fc.property(
        temperature,
        temperature,
        airflow,
        fc.double({ min: 40, max: 100, noNaN: true }),
        (one, other, cfm, pct) => {
          const at = (outdoorDbF: number) =>
            run(cfm, {
              capacityCeilingBtuh: capacityCeilingBtuh(points, outdoorDbF, pct),
              heldTemperatureF: 42,
              minimumCapacityBtuh: 5_000,
            });
          const cool = at(Math.min(one, other));
          const hot = at(Math.max(one, other));
          expect(hot.totalBtuh).toBeLessThanOrEqual(cool.totalBtuh + 1e-6);
          expect(hot.adpF).toBeGreaterThanOrEqual(cool.adpF - 1e-9);
        },
      ),
      RUNS,
    );
    expect(capacityCeilingBtuh(points, 100, 50)).toBeCloseTo(17_250, 9); // (36,000 − 1,500) / 2
    expect(() => capacityCeilingBtuh(points, 116, 50)).toThrow(OutOfRangeError);
    expect(() => capacityCeilingBtuh([...points].reverse(), 95, 50)).toThrow(ImpossibleStateError);
  });
});

describe("the trade's experience: a three-ton unit set to two tons on a three-ton coil removes about 7.5 lb/h", () => {
  /*
   * Common practice, no source: nominal three-ton outdoor unit set to two tons, three-ton indoor coil, lowest airflow, indoor
   * about 75 °F and 55 % RH, continuous run, about 7.5 lb/h (0.9 gal/h).
   *
   * The model says so at 550 cfm with the coil held at 40 °F. Both are plausible:
   * - 550 cfm is 275 cfm per ton of the two tons set. Residential setups run from 450 cfm per ton in dry climates to 325 where
   *   moisture removal matters (a trade article, published); the lowest setting of a variable-speed blower lies a little below (common
   *   practice, no source). Per nominal ton of the coil it is 183.
   * - 40 °F evaporating is colder than the 45 °F of a rated point and still far above freezing; colder-coil settings of
   *   coil-temperature-held equipment lie at about 38 to 42 °F (common practice, no source). The coil surface stays at about 48 °F.
   */
  const set = { capacityCeilingBtuh: 24_000, heldTemperatureF: 40 };

  it("at 550 cfm and 40 °F", () => {
    const state = run(550, set, indoorAir(75, 55));
    expect(Math.abs(state.moistureLbPerH - 7.5)).toBeLessThan(0.25);
    expect(state.cycling).toBe(false);
    expect(state.adpF).toBeGreaterThan(45);
    // Independent arithmetic: two tons at that split. Latent = 7.5 · 1,094 = 8,200 of 24,000 → sensible ratio 0.66.
    expect(Math.abs((state.sensibleRatio ?? 0) - 0.66)).toBeLessThan(0.015);
    // Independent arithmetic with 4.5 · cfm · ΔW: leaving saturated near 48 °F holds 0.0071, entering 0.0101 lb/lb.
    expect(Math.abs(state.moistureLbPerH / (4.5 * 550 * (0.0101 - 0.0071)) - 1)).toBeLessThan(0.05);
  });

  it("and clearly less at the airflow of a rated point or with a warmer coil", () => {
    expect(run(800, set, indoorAir(75, 55)).moistureLbPerH).toBeLessThan(6);
    expect(run(550, { ...set, heldTemperatureF: 46 }, indoorAir(75, 55)).moistureLbPerH).toBeLessThan(5.5);
  });
});

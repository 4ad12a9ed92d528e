import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type MoistAir, moistAir } from "@/lib/engineering/air";
import {
  auxiliaryHeatKw,
  balancePoint,
  bypassFactorAt,
  capacityCeilingBtuh,
  capacityMap,
  coilFromRating,
  coilTemperatureHeld,
  coolingRatios,
  type EquipmentKind,
  equipmentLimits,
  humidityCapability,
  type PerformancePoint,
  performanceAt,
  ratedApproachF,
  sizingFindings,
  stageDropTransient,
} from "@/lib/engineering/equipment";
import { isEngineeringError } from "@/lib/engineering/errors";
import { seedLimits } from "@/lib/engineering/limit-definition";
import { SYSTEM } from "./fixtures";

/*
 * Wild input of every kind: the answer obeys the laws or is a typed refusal. Never a NaN, never a foreign error, never a hang.
 */
const RUNS = { seed: 20261125, numRuns: Number(process.env.DEWLEDGER_RANDOM_RUNS ?? 2000) };
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

/** Every number anywhere in a result is finite. */
function expectFinite(value: unknown): void {
  if (typeof value === "number") {
    if (!Number.isFinite(value)) throw new Error(`not finite: ${value}`);
  } else if (Array.isArray(value)) for (const one of value) expectFinite(one);
  else if (typeof value === "object" && value !== null)
    for (const one of Object.values(value)) expectFinite(one);
}

/** Runs it; returns the result, or null for a typed refusal. */
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

describe("random inputs", () => {
  it("coilTemperatureHeld", () => {
    let answered = 0;
    fc.assert(
      fc.property(air, mostly(50, 3_000), system, (entering, airflowCfm, settings) => {
        const state = attempt(() => coilTemperatureHeld({ entering, airflowCfm, system: settings }));
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
      RUNS,
    );
    expect(answered).toBeGreaterThan(RUNS.numRuns / 4);
  });

  it("coilFromRating, bypassFactorAt, ratedApproachF", () => {
    let answered = 0;
    fc.assert(
      fc.property(
        air,
        mostly(200, 3_000),
        mostly(5_000, 80_000),
        mostly(0.5, 1),
        (entering, airflowCfm, totalBtuh, sensibleRatio) => {
          const coil = attempt(() => coilFromRating({ entering, airflowCfm, totalBtuh, sensibleRatio }));
          if (coil === null) return;
          answered += 1;
          expect(coil.bypassFactor).toBeGreaterThan(0);
          expect(coil.bypassFactor).toBeLessThan(1);
          expect(coil.adpF).toBeLessThan(coil.leavingDbF);
          expect(coil.leavingDbF).toBeLessThan(entering.dryBulbF);
        },
      ),
      RUNS,
    );
    expect(answered).toBeGreaterThan(RUNS.numRuns / 20);
    fc.assert(
      fc.property(wild, wild, (one, other) => {
        attempt(() => bypassFactorAt(one, other));
        attempt(() => ratedApproachF({ adpF: one, evaporatingF: other }));
        attempt(() => auxiliaryHeatKw(one, other));
      }),
      RUNS,
    );
  });

  it("performanceAt", () => {
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
          const found = attempt(() =>
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
      RUNS,
    );
    expect(answered).toBeGreaterThan(0);
  });

  it("sizingFindings and coolingRatios", () => {
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
          const found = attempt(() => sizingFindings(input, limits));
          for (const one of found ?? []) {
            expect(one.statement).not.toMatch(/NaN|Infinity|undefined/);
            if (one.ruleId === "equipment.latent-warning") expect(one.binding).toBe(false);
          }
        },
      ),
      RUNS,
    );
    fc.assert(
      fc.property(mostly(500, 9e4), mostly(0, 9e4), mostly(5e4, 9e4), mostly(0, 5e4), (s, l, t, c) => {
        const found = attempt(() =>
          coolingRatios({
            sensibleLoadBtuh: s,
            latentLoadBtuh: l,
            totalCapacityBtuh: t,
            sensibleCapacityBtuh: c,
          }),
        );
        if (found !== null) expect(found.adjustedSensibleBtuh + found.adjustedLatentBtuh).toBeCloseTo(t, 6);
      }),
      RUNS,
    );
  });

  it("balancePoint and capacityCeilingBtuh", () => {
    fc.assert(
      fc.property(
        mostly(5_000, 50_000),
        mostly(20_000, 90_000),
        mostly(5_000, 90_000),
        mostly(-20, 40),
        mostly(55, 75),
        (capacityAt17FBtuh, capacityAt47FBtuh, designLoadBtuh, designF, zeroLoadF) => {
          const found = attempt(() =>
            balancePoint({ capacityAt17FBtuh, capacityAt47FBtuh, designLoadBtuh, designF, zeroLoadF }),
          );
          if (found !== null) expect(found.balancePointF).toBeLessThanOrEqual(zeroLoadF);
        },
      ),
      RUNS,
    );
    const points = fc.array(
      fc.record({ outdoorDbF: mostly(60, 120), capacityBtuh: mostly(10_000, 60_000) }),
      {
        maxLength: 3,
      },
    );
    fc.assert(
      fc.property(points, mostly(60, 120), mostly(10, 100), (given, outdoorDbF, pct) => {
        const found = attempt(() => capacityCeilingBtuh(given, outdoorDbF, pct));
        if (found !== null) expect(found).toBeLessThanOrEqual(Math.max(...given.map((p) => p.capacityBtuh)));
      }),
      RUNS,
    );
  });

  it("capacityMap, stageDropTransient, humidityCapability", () => {
    const few = { ...RUNS, numRuns: Math.ceil(RUNS.numRuns / 10) };
    fc.assert(
      fc.property(
        air,
        system,
        mostly(300, 1_500),
        mostly(300, 900),
        mostly(5_000, 40_000),
        mostly(0, 9_000),
        (entering, settings, before, after, sensible, latent) => {
          attempt(() =>
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
          const drop = attempt(() =>
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
          attempt(() =>
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

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type MoistAir, moistAir } from "@/lib/engineering/air";
import {
  COIL,
  type CoilTemperatureHeldSystem,
  coilAtFlow,
  coilConstants,
  coilNumbers,
  coilTemperatureHeld,
  solveCoil,
} from "@/lib/engineering/equipment";
import { SEA_LEVEL_PSIA, SYSTEM } from "./fixtures";

/*
 * The fast core against a slow second solution of the same equations: psychrolib's moist air, plain halving, the limits
 * applied in the order in which the design states them (held, then ceiling, then minimum, then frost).
 */
const SOURCE = "independent solution by halving with psychrolib (computed)";

function halve(low: number, high: number, tooWarm: (t: number) => boolean): number {
  let [a, b] = [low, high];
  for (let step = 0; step < 80; step += 1) {
    const middle = (a + b) / 2;
    if (tooWarm(middle)) b = middle;
    else a = middle;
  }
  return (a + b) / 2;
}

function reference(entering: MoistAir, airflowCfm: number, system: CoilTemperatureHeldSystem) {
  const dryAir = (airflowCfm * 60) / entering.specificVolumeFt3PerLb;
  const contact = dryAir * (1 - Math.exp(-system.a0LbPerH / dryAir));
  const surface = (t: number): MoistAir => {
    const wet = moistAir({ dryBulbF: t, relativeHumidityPct: 100, pressurePsia: entering.pressurePsia });
    const isDry = wet.humidityRatio >= entering.humidityRatio;
    return isDry
      ? moistAir({ dryBulbF: t, humidityRatio: entering.humidityRatio, pressurePsia: entering.pressurePsia })
      : wet;
  };
  const capacity = (t: number): number => contact * (entering.enthalpyBtuPerLb - surface(t).enthalpyBtuPerLb);
  const approach = (btuh: number): number =>
    system.approach.kind === "fixed"
      ? system.approach.approachF
      : (system.approach.ratedApproachF * btuh) / system.approach.ratedTotalBtuh;
  const inF = entering.dryBulbF;

  const held = halve(10, inF, (t) => t > system.heldTemperatureF + approach(capacity(t)));
  let adpF = Math.max(held, system.frostLimitF);
  if (capacity(adpF) > system.capacityCeilingBtuh) {
    adpF = halve(adpF, inF, (t) => capacity(t) < system.capacityCeilingBtuh);
  } else if (capacity(adpF) < system.minimumCapacityBtuh) {
    adpF =
      capacity(system.frostLimitF) < system.minimumCapacityBtuh
        ? system.frostLimitF
        : halve(system.frostLimitF, adpF, (t) => capacity(t) < system.minimumCapacityBtuh);
  }
  return { adpF, totalBtuh: capacity(adpF) };
}

describe(`coilTemperatureHeld against an ${SOURCE}`, () => {
  it("gives the same surface and capacity", () => {
    const seen = new Map<string, number>();
    fc.assert(
      fc.property(
        fc.double({ min: 62, max: 95, noNaN: true }),
        fc.double({ min: 15, max: 95, noNaN: true }),
        fc.double({ min: 200, max: 1_800, noNaN: true }),
        fc.double({ min: 34, max: 56, noNaN: true }),
        fc.double({ min: 6_000, max: 50_000, noNaN: true }),
        fc.double({ min: 0.4, max: 1, noNaN: true }),
        fc.double({ min: 25, max: 45, noNaN: true }),
        fc.constantFrom(
          SYSTEM.approach,
          { kind: "fixed" as const, approachF: 6 },
          { kind: "fixed" as const, approachF: 0 },
        ),
        (dryBulbF, relativeHumidityPct, cfm, heldTemperatureF, ceiling, share, frostLimitF, approach) => {
          const entering = moistAir({ dryBulbF, relativeHumidityPct, pressurePsia: SEA_LEVEL_PSIA });
          const system = {
            ...SYSTEM,
            approach,
            heldTemperatureF,
            capacityCeilingBtuh: ceiling,
            minimumCapacityBtuh: share * ceiling,
            frostLimitF,
          };
          const expected = reference(entering, cfm, system);
          const found = coilTemperatureHeld({ entering, airflowCfm: cfm, system });
          seen.set(found.limitedBy, (seen.get(found.limitedBy) ?? 0) + 1);
          // 2e-5 Btu/lb of the fast saturation times at most 8,000 lb/h is 0.16 Btu/h.
          expect(Math.abs(found.totalBtuh - expected.totalBtuh)).toBeLessThan(0.2);
          expect(Math.abs(found.adpF - expected.adpF)).toBeLessThan(1e-4);
        },
      ),
      { seed: 20261125, numRuns: 400 },
    );
    for (const limit of ["held temperature", "capacity ceiling", "minimum capacity", "frost limit"]) {
      expect(seen.get(limit) ?? 0).toBeGreaterThan(15);
    }
  });

  it("does not depend on the minute before beyond 1e-9 °F", () => {
    const warm = coilNumbers(SEA_LEVEL_PSIA);
    fc.assert(
      fc.property(
        fc.double({ min: 65, max: 85, noNaN: true }),
        fc.double({ min: 20, max: 90, noNaN: true }),
        fc.double({ min: 1_000, max: 7_000, noNaN: true }),
        fc.double({ min: 10_000, max: 50_000, noNaN: true }),
        (dryBulbF, relativeHumidityPct, dryAirLbPerH, ceilingBtuh) => {
          const entering = moistAir({ dryBulbF, relativeHumidityPct, pressurePsia: SEA_LEVEL_PSIA });
          const constants = coilConstants({ ...SYSTEM, heldTemperatureF: 42 }, entering);
          const fresh = coilNumbers(SEA_LEVEL_PSIA);
          for (const out of [warm, fresh]) {
            out[COIL.enteringDbF] = dryBulbF;
            out[COIL.enteringHumidityRatio] = entering.humidityRatio;
            out[COIL.ceilingBtuh] = ceilingBtuh;
            out[COIL.minimumBtuh] = 9_000;
            solveCoil(coilAtFlow(constants, dryAirLbPerH), out);
          }
          expect(Math.abs((warm[COIL.adpF] ?? 0) - (fresh[COIL.adpF] ?? 1))).toBeLessThan(1e-9);
          expect(Math.abs((warm[COIL.totalBtuh] ?? 0) - (fresh[COIL.totalBtuh] ?? 1))).toBeLessThan(1e-5);
        },
      ),
      { seed: 20261125, numRuns: 400 },
    );
  });
});

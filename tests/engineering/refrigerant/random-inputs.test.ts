import fc from "fast-check";
import { expect, test } from "vitest";
import { isEngineeringError } from "@/lib/engineering/errors";
import { seedLimits } from "@/lib/engineering/limit-definition";
import {
  absolutePressurePsia,
  chargeFindings,
  evacuationFindings,
  expectedTestPressurePsig,
  findMinimumRoomAreaFt2,
  flammableChargeFindings,
  gaugePressurePsig,
  lineSetAdjustmentOz,
  pressureTestFindings,
  REFRIGERANTS,
  refrigerantLimits,
  saturationPressurePsia,
  saturationTempF,
  saturationTempUncertaintyF,
  subcoolingF,
  superheatF,
  targetSuperheatF,
} from "@/lib/engineering/refrigerant";

const RUNS = Number(process.env.DEWLEDGER_RANDOM_RUNS ?? 2000);
/** Never a hang: 5 s and 1 ms for each run. */
const TIMEOUT_MS = 5_000 + RUNS;
const limits = seedLimits(refrigerantLimits);

const wild = fc.oneof(
  fc.double(),
  fc.constantFrom(Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, -0, -1, 1e9),
);
const near = (min: number, max: number) =>
  fc.oneof({ weight: 8, arbitrary: fc.double({ min, max, noNaN: true }) }, { weight: 1, arbitrary: wild });
const maybe = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { freq: 8 });
const refrigerant = fc.constantFrom(...REFRIGERANTS);

function numbersIn(value: unknown): number[] {
  if (typeof value === "number") return [value];
  if (value !== null && typeof value === "object") return Object.values(value).flatMap(numbersIn);
  return [];
}

/** The result, or null after a typed refusal. Anything else fails the test. */
function lawful<T>(call: () => T): T | null {
  try {
    const result = call();
    expect(numbersIn(result).every(Number.isFinite)).toBe(true);
    expect(JSON.stringify(result) ?? "").not.toMatch(/NaN|Infinity/);
    return result;
  } catch (error) {
    if (isEngineeringError(error)) return null;
    throw error;
  }
}

test("saturation and single functions answer lawfully or refuse", { timeout: TIMEOUT_MS }, () => {
  let answered = 0;
  fc.assert(
    fc.property(
      refrigerant,
      fc.constantFrom("bubble" as const, "dew" as const),
      near(-60, 160),
      near(5, 700),
      near(6, 17),
      (fluid, side, tempF, pressure, site) => {
        const p = lawful(() => saturationPressurePsia(fluid, tempF, side));
        if (p !== null) {
          answered += 1;
          expect(Math.abs(saturationTempF(fluid, p, side) - tempF)).toBeLessThan(1e-9);
          lawful(() => saturationTempUncertaintyF(fluid, p, side));
        }
        const t = lawful(() => saturationTempF(fluid, pressure, side));
        if (t !== null)
          expect(saturationPressurePsia(fluid, Math.min(Math.max(t, -40), 150), side) / pressure).toBeCloseTo(
            1,
            9,
          );
        lawful(() => absolutePressurePsia(pressure, site));
        lawful(() => gaugePressurePsig(pressure, site));
        lawful(() => targetSuperheatF({ indoorWetBulbF: tempF, outdoorDryBulbF: pressure }));
        lawful(() =>
          lineSetAdjustmentOz({ lineLengthFt: pressure, includedLengthFt: tempF, ouncesPerFt: site }),
        );
        lawful(() => findMinimumRoomAreaFt2({ refrigerant: fluid, chargeLb: site, releaseHeightFt: tempF }));
        lawful(() =>
          expectedTestPressurePsig({
            startPressurePsig: pressure,
            startTempF: tempF,
            endTempF: tempF,
            sitePressurePsia: site,
          }),
        );
        lawful(() =>
          superheatF({
            refrigerant: fluid,
            suctionPressurePsig: pressure,
            suctionLineF: tempF,
            sitePressurePsia: site,
          }),
        );
        lawful(() =>
          subcoolingF({
            refrigerant: fluid,
            liquidPressurePsig: pressure,
            liquidLineF: tempF,
            sitePressurePsia: site,
          }),
        );
      },
    ),
    { seed: 71, numRuns: RUNS },
  );
  expect(answered).toBeGreaterThan(RUNS / 4);
});

test("findings answer lawfully or refuse", { timeout: TIMEOUT_MS }, () => {
  let answered = 0;
  const charge = fc.record({
    refrigerant: maybe(refrigerant),
    meteringDevice: maybe(fc.constantFrom("fixed orifice" as const, "expansion valve" as const)),
    sitePressurePsia: maybe(near(10, 15)),
    suctionPressurePsig: maybe(near(60, 180)),
    suctionLineF: maybe(near(30, 80)),
    liquidPressurePsig: maybe(near(150, 450)),
    liquidLineF: maybe(near(60, 120)),
    indoorWetBulbF: maybe(near(50, 80)),
    outdoorDryBulbF: maybe(near(50, 115)),
    makerSuperheatF: maybe(near(0, 30)),
    makerSubcoolingF: maybe(near(0, 30)),
    steadyMinutes: maybe(near(0, 60)),
    superheatUncertaintyF: maybe(near(0, 5)),
    subcoolingUncertaintyF: maybe(near(0, 5)),
  });
  const evacuation = fc.record({
    vacuumMicrons: maybe(near(0, 1_000)),
    heldMicrons: maybe(near(0, 1_000)),
    holdMinutes: maybe(near(0, 60)),
    makerHoldMinutes: maybe(near(0, 60)),
  });
  const pressureTest = fc.record({
    startPressurePsig: maybe(near(100, 500)),
    startTempF: maybe(near(40, 120)),
    endPressurePsig: maybe(near(100, 500)),
    endTempF: maybe(near(40, 120)),
    sitePressurePsia: maybe(near(10, 15)),
    dropUncertaintyPsi: maybe(near(0, 5)),
  });
  const flammable = fc.record({
    refrigerant: maybe(refrigerant),
    chargeLb: maybe(near(0, 40)),
    roomAreaFt2: maybe(near(0, 500)),
    releaseHeightFt: maybe(near(2, 7)),
  });
  fc.assert(
    fc.property(charge, evacuation, pressureTest, flammable, (a, b, c, d) => {
      if (lawful(() => chargeFindings(a, limits)) !== null) answered += 1;
      lawful(() => evacuationFindings(b, limits));
      lawful(() => pressureTestFindings(c, limits));
      lawful(() => flammableChargeFindings(d));
    }),
    { seed: 72, numRuns: RUNS },
  );
  expect(answered).toBeGreaterThan(RUNS / 10);
});

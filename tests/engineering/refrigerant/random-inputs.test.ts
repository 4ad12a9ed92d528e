import fc from "fast-check";
import { expect } from "vitest";
import { seedLimits } from "@/lib/engineering/limit-definition";
import * as folder from "@/lib/engineering/refrigerant";
import {
  everyFunctionTried,
  lawful,
  RANDOM_RUNS as RUNS,
  randomTest,
  runs,
  tried,
} from "../../support/random-inputs";

const {
  flammableChargeLimits,
  lineSetFindings,
  isFlammable,
  saturationRangePsia,
  saturationUncertaintyPct,
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
} = tried(folder);

const limits = seedLimits(refrigerantLimits);

const wild = fc.oneof(
  fc.double(),
  fc.constantFrom(Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, -0, -1, 1e9),
);
const near = (min: number, max: number) =>
  fc.oneof({ weight: 8, arbitrary: fc.double({ min, max, noNaN: true }) }, { weight: 1, arbitrary: wild });
const maybe = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { freq: 8 });
const refrigerant = fc.constantFrom(...REFRIGERANTS);

randomTest("saturation and single functions answer lawfully or refuse", () => {
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
        lawful(() => saturationTempUncertaintyF(fluid, pressure, side));
        lawful(() => absolutePressurePsia(pressure, site));
        lawful(() => gaugePressurePsig(pressure, site));
        lawful(() =>
          lineSetAdjustmentOz({ lineLengthFt: pressure, includedLengthFt: tempF, ouncesPerFt: site }),
        );
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
    runs(71),
  );
  expect(answered).toBeGreaterThan(RUNS / 4);
});

randomTest("charging formula and minimum room answer lawfully or refuse", () => {
  fc.assert(
    fc.property(
      near(50, 80),
      near(50, 115),
      near(0, 40),
      near(1, 8),
      refrigerant,
      (wet, dry, lb, height, fluid) => {
        const target = lawful(() => targetSuperheatF({ indoorWetBulbF: wet, outdoorDryBulbF: dry }));
        if (target !== null) expect(target).toBeGreaterThanOrEqual(5);
        const room = { refrigerant: fluid, chargeLb: lb, releaseHeightFt: height };
        const area = lawful(() => findMinimumRoomAreaFt2(room));
        if (area !== null) expect(area).toBeGreaterThan(0);
      },
    ),
    runs(74),
  );
});

randomTest("findings answer lawfully or refuse", () => {
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
  const lineSet = fc.record({
    lineLengthFt: maybe(near(0, 100)),
    includedLengthFt: maybe(near(0, 25)),
    ouncesPerFt: maybe(near(0, 1)),
    addedOz: maybe(near(-20, 60)),
  });
  const flammable = fc.record({
    refrigerant: maybe(refrigerant),
    chargeLb: maybe(near(0, 40)),
    roomAreaFt2: maybe(near(0, 500)),
    releaseHeightFt: maybe(near(2, 7)),
  });
  fc.assert(
    fc.property(charge, evacuation, pressureTest, flammable, lineSet, (a, b, c, d, e) => {
      if (lawful(() => chargeFindings(a, limits)) !== null) answered += 1;
      lawful(() => evacuationFindings(b, limits));
      lawful(() => pressureTestFindings(c, limits));
      lawful(() => flammableChargeFindings(d));
      lawful(() => lineSetFindings(e));
    }),
    runs(72),
  );
  expect(answered).toBeGreaterThan(RUNS / 10);
});

randomTest("limits and names of the table are given or refused", () => {
  fc.assert(
    fc.property(
      fc.oneof(refrigerant, fc.constantFrom("", "R-999", "toString") as fc.Arbitrary<never>),
      fc.constantFrom("bubble" as const, "dew" as const),
      (fluid, side) => {
        const limit = lawful(() => flammableChargeLimits(fluid));
        const range = lawful(() => saturationRangePsia(fluid, side));
        if (range !== null) expect(range.minPsia).toBeLessThan(range.maxPsia);
        if (limit) expect(lawful(() => isFlammable(fluid))).toBe(true);
        else lawful(() => isFlammable(fluid));
        const pct = lawful(() => saturationUncertaintyPct(fluid));
        if (pct !== null) expect(pct).toBeGreaterThan(0);
      },
    ),
    runs(73),
  );
});

everyFunctionTried("refrigerant", folder);

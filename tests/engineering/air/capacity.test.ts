import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { airSideCapacity, moistAir } from "@/lib/engineering/air";
import { ImpossibleStateError, OutOfRangeError } from "@/lib/engineering/errors";

const PRESSURE = 14.696;
const SI_SOURCE =
  "ASHRAE Handbook, Fundamentals 2017, ch. 1, cooling example in SI: 30 °C, 50 %, 5 m³/s to saturated 10 °C [F]";
const IP_SOURCE = "ASHRAE Handbook, Fundamentals, cooling-coil example in IP [M+, C]";

describe(SI_SOURCE, () => {
  const entering = moistAir({ dryBulbF: 86, relativeHumidityPct: 50, pressurePsia: PRESSURE });
  const leaving = moistAir({ dryBulbF: 50, relativeHumidityPct: 100, pressurePsia: PRESSURE });
  // 1 m³ = 35.3147 ft³; 1 lb = 0.45359237 kg; 1 kW = 3,412.14 Btu/h; 1 Btu/lb = 2.326 kJ/kg.
  const coil = airSideCapacity({ airflowCfm: 5 * 60 * 35.3147, entering, leaving });
  const kgPerS = 0.45359237 / 3_600;

  // 0.5 % is the ideal gas's known shortfall in moisture; dry air and heat share it in part.
  test.each([
    ["dry air, kg/s", coil.dryAirLbPerH * kgPerS, 5.7, 0.002],
    ["condensate, kg/s", coil.moistureLbPerH * kgPerS, 0.0325, 0.005],
    ["capacity, kW", coil.totalBtuh / 3_412.14, 198, 0.005],
    // Zero of enthalpy: 0 °F for dry air here, 0 °C in SI: 0.240·32 = 7.68 Btu/lb apart.
    ["entering enthalpy, kJ/kg", (entering.enthalpyBtuPerLb - 7.68) * 2.326, 64.35, 0.005],
    ["leaving enthalpy, kJ/kg", (leaving.enthalpyBtuPerLb - 7.68) * 2.326, 29.35, 0.005],
  ])("%s", (_name, value, expected, tolerance) => {
    expect(Math.abs(value / expected - 1)).toBeLessThan(tolerance);
  });
});

describe(IP_SOURCE, () => {
  test("85 °F, 50 %, 10,000 cfm to saturated 50 °F: about 50.8 tons and 226 lb/h", () => {
    const coil = airSideCapacity({
      airflowCfm: 10_000,
      entering: moistAir({ dryBulbF: 85, relativeHumidityPct: 50, pressurePsia: PRESSURE }),
      leaving: moistAir({ dryBulbF: 50, relativeHumidityPct: 100, pressurePsia: PRESSURE }),
    });
    // 0.55 %: the ideal gas's shortfall in moisture.
    expect(Math.abs(coil.totalBtuh / 12_000 / 50.8 - 1)).toBeLessThan(0.0055);
    expect(Math.abs(coil.moistureLbPerH / 226 - 1)).toBeLessThan(0.0055);
  });
});

const enteringAir = fc.record({
  dryBulbF: fc.double({ min: 60, max: 100, noNaN: true }),
  relativeHumidityPct: fc.double({ min: 20, max: 95, noNaN: true }),
  pressurePsia: fc.double({ min: 10.1, max: 15.3, noNaN: true }),
});

describe("laws of the coil", () => {
  test("heat and water of the air are accounted for: nothing made, nothing lost", () => {
    fc.assert(
      fc.property(
        enteringAir,
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 50, max: 5_000, noNaN: true }),
        (input, drop, airflowCfm) => {
          const entering = moistAir(input);
          const dryBulbF = entering.dryBulbF - drop * 25;
          const leaving = moistAir({
            dryBulbF,
            pressurePsia: input.pressurePsia,
            relativeHumidityPct: 90,
          });
          const coil = airSideCapacity({ airflowCfm, entering, leaving });
          expect(coil.sensibleBtuh + coil.latentBtuh).toBeCloseTo(coil.totalBtuh, 6);
          const air = coil.dryAirLbPerH * (entering.enthalpyBtuPerLb - leaving.enthalpyBtuPerLb);
          expect(coil.totalBtuh + coil.condensateBtuh).toBeCloseTo(air, 6);
          if (coil.moistureLbPerH > 0) {
            // Heat of vaporisation at the leaving temperature: 1061 + 0.444 t − (t − 32).
            const vaporisation = 1_061 + 0.444 * dryBulbF - (dryBulbF - 32);
            expect(coil.latentBtuh / coil.moistureLbPerH / vaporisation).toBeCloseTo(1, 6);
          }
        },
      ),
      { seed: 31 },
    );
  });

  test("twice the air, twice the heat", () => {
    const entering = moistAir({ dryBulbF: 80, wetBulbF: 67, pressurePsia: PRESSURE });
    const leaving = moistAir({ dryBulbF: 58, wetBulbF: 56.5, pressurePsia: PRESSURE });
    const once = airSideCapacity({ airflowCfm: 600, entering, leaving });
    const twice = airSideCapacity({ airflowCfm: 1_200, entering, leaving });
    expect(twice.totalBtuh).toBeCloseTo(2 * once.totalBtuh, 6);
    expect(twice.sensibleRatio).toBeCloseTo(once.sensibleRatio ?? Number.NaN, 9);
  });

  test("heating and no change have no sensible ratio", () => {
    const cool = moistAir({ dryBulbF: 70, relativeHumidityPct: 40, pressurePsia: PRESSURE });
    const warm = moistAir({ dryBulbF: 100, humidityRatio: cool.humidityRatio, pressurePsia: PRESSURE });
    const heating = airSideCapacity({ airflowCfm: 1_000, entering: cool, leaving: warm });
    expect(heating.totalBtuh).toBeLessThan(0);
    expect(heating.sensibleRatio).toBeNull();
    expect(airSideCapacity({ airflowCfm: 1_000, entering: cool, leaving: cool }).sensibleRatio).toBeNull();
  });

  test("refuses two sites and a wild airflow", () => {
    const entering = moistAir({ dryBulbF: 80, wetBulbF: 67, pressurePsia: PRESSURE });
    const leaving = moistAir({ dryBulbF: 58, wetBulbF: 56.5, pressurePsia: 12 });
    expect(() => airSideCapacity({ airflowCfm: 1_000, entering, leaving })).toThrow(ImpossibleStateError);
    expect(() => airSideCapacity({ airflowCfm: -1, entering, leaving: entering })).toThrow(OutOfRangeError);
  });
});

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type MoistAirInput, moistAir, waterSaturationPressurePsia } from "@/lib/engineering/air";
import { ImpossibleStateError, OutOfRangeError } from "@/lib/engineering/errors";

const SEA_LEVEL = 14.696;

const SATURATION_SOURCE = "ASHRAE Handbook, Fundamentals 2017, ch. 1 table 3, equations within 300 ppm [F]";

describe(`water saturation pressure: ${SATURATION_SOURCE}`, () => {
  test.each([
    [41, 0.12656],
    [77, 0.45973],
    [122, 1.7914],
    [212, 14.7094],
  ])("%d °F is %d psia", (tempF, expected) => {
    expect(Math.abs(waterSaturationPressurePsia(tempF) / expected - 1)).toBeLessThan(300e-6);
  });
});

const EXAMPLE_SOURCE = "ASHRAE Handbook, Fundamentals 2017, ch. 1, worked example 1 [F]";

describe(`100 °F dry bulb, 65 °F wet bulb at sea level: ${EXAMPLE_SOURCE}`, () => {
  const air = moistAir({ dryBulbF: 100, wetBulbF: 65, pressurePsia: SEA_LEVEL });

  // The example is read from a real-gas chart: each tolerance is half a division of the chart's reading.
  test.each([
    ["humidityRatio", 0.00523, 0.00005],
    ["dewPointF", 40, 0.5],
    ["relativeHumidityPct", 13, 0.5],
    ["enthalpyBtuPerLb", 29.8, 0.1],
    ["specificVolumeFt3PerLb", 14.22, 0.01],
  ] as const)("%s is %d", (field, expected, tolerance) => {
    expect(Math.abs(air[field] - expected)).toBeLessThan(tolerance);
  });
});

const measureOfMoisture = fc.constantFrom(
  "relativeHumidityPct" as const,
  "wetBulbF" as const,
  "dewPointF" as const,
  "humidityRatio" as const,
);
/** Sites to 10,000 ft, weather and supply air a house may see. */
const plausibleAir = fc.record({
  dryBulbF: fc.double({ min: -20, max: 130, noNaN: true }),
  relativeHumidityPct: fc.double({ min: 1, max: 100, noNaN: true }),
  pressurePsia: fc.double({ min: 10.1, max: 15.3, noNaN: true }),
});

describe("laws of moist air", () => {
  test("the same state from any measure of its moisture", () => {
    fc.assert(
      fc.property(plausibleAir, measureOfMoisture, (input, measure) => {
        const direct = moistAir(input);
        const again = moistAir({
          dryBulbF: input.dryBulbF,
          pressurePsia: input.pressurePsia,
          [measure]: direct[measure],
        } as MoistAirInput);
        expect(Math.abs(again.humidityRatio / direct.humidityRatio - 1)).toBeLessThan(1e-6);
        // In the narrow band at 32 °F a wet bulb on the liquid side is another state's name; none is returned there.
        expect(Math.abs(again.wetBulbF - direct.wetBulbF)).toBeLessThan(1e-5);
        expect(Math.abs(again.dewPointF - direct.dewPointF)).toBeLessThan(1e-4);
        expect(Math.abs(again.relativeHumidityPct - direct.relativeHumidityPct)).toBeLessThan(1e-4);
      }),
      { seed: 12, numRuns: 2_000 },
    );
  });

  test("dew point ≤ wet bulb ≤ dry bulb, all equal at saturation", () => {
    fc.assert(
      fc.property(plausibleAir, (input) => {
        const air = moistAir(input);
        expect(air.dewPointF).toBeLessThanOrEqual(air.wetBulbF + 1e-9);
        expect(air.wetBulbF).toBeLessThanOrEqual(air.dryBulbF);
        const saturated = moistAir({ ...input, relativeHumidityPct: 100 });
        expect(Math.abs(saturated.dewPointF - input.dryBulbF)).toBeLessThan(1e-6);
        // The iced-bulb equation misses saturation by up to 0.02 °F (its constants do not quite cancel at one temperature).
        expect(Math.abs(saturated.wetBulbF - input.dryBulbF)).toBeLessThan(0.02);
      }),
      { seed: 13 },
    );
  });

  test("more humidity: wetter, heavier in enthalpy, lighter in density, higher wet bulb", () => {
    fc.assert(
      fc.property(plausibleAir, fc.double({ min: 0.1, max: 0.99, noNaN: true }), (input, share) => {
        const drier = moistAir({ ...input, relativeHumidityPct: input.relativeHumidityPct * share });
        const wetter = moistAir(input);
        expect(wetter.humidityRatio).toBeGreaterThan(drier.humidityRatio);
        expect(wetter.enthalpyBtuPerLb).toBeGreaterThan(drier.enthalpyBtuPerLb);
        expect(wetter.specificVolumeFt3PerLb).toBeGreaterThan(drier.specificVolumeFt3PerLb);
        expect(wetter.wetBulbF).toBeGreaterThanOrEqual(drier.wetBulbF);
      }),
      { seed: 14 },
    );
  });

  test("what was given comes back unchanged", () => {
    const air = moistAir({ dryBulbF: 75, wetBulbF: 62.5, pressurePsia: 12.1002 });
    expect([air.dryBulbF, air.wetBulbF, air.pressurePsia]).toEqual([75, 62.5, 12.1002]);
    expect(air.grainsPerLb).toBeCloseTo(air.humidityRatio * 7_000, 10);
  });

  test("of the two wet bulbs that the wet and iced equations allow near 32 °F, the iced one is returned", () => {
    // 45 °F, 20 %, 2,500 ft: the real-gas reference has 31.47 °F, the liquid equation would give 32.37 °F.
    const air = moistAir({ dryBulbF: 45, relativeHumidityPct: 20, pressurePsia: 13.416 });
    expect(air.wetBulbF).toBeLessThan(32);
  });
});

describe("refusals name the field", () => {
  const place = { dryBulbF: 75, pressurePsia: SEA_LEVEL };
  test.each([
    ["wet bulb above dry bulb", { ...place, wetBulbF: 75.1 }, ImpossibleStateError, ["wetBulbF", "dryBulbF"]],
    [
      "dew point above dry bulb",
      { ...place, dewPointF: 76 },
      ImpossibleStateError,
      ["dewPointF", "dryBulbF"],
    ],
    [
      "more water than saturation",
      { ...place, humidityRatio: 0.02 },
      ImpossibleStateError,
      ["humidityRatio", "dryBulbF"],
    ],
    [
      "wet bulb below bone-dry air",
      { ...place, wetBulbF: 35 },
      ImpossibleStateError,
      ["wetBulbF", "dryBulbF"],
    ],
    [
      "no humidity at all",
      { ...place, relativeHumidityPct: 0 },
      ImpossibleStateError,
      ["relativeHumidityPct"],
    ],
    [
      "two measures",
      { ...place, wetBulbF: 60, dewPointF: 50 },
      ImpossibleStateError,
      ["wetBulbF", "dewPointF"],
    ],
  ])("%s", (_name, input, kind, fields) => {
    let caught: unknown = null;
    try {
      moistAir(input);
    } catch (error) {
      caught = error;
    }
    expect(caught).toBeInstanceOf(kind);
    expect((caught as ImpossibleStateError).fields).toEqual(fields);
  });

  test("no measure of moisture", () => {
    expect(() => moistAir(place as unknown as MoistAirInput)).toThrow(/relativeHumidityPct, wetBulbF/);
  });

  test.each([
    ["relativeHumidityPct", { ...place, relativeHumidityPct: 101 }],
    ["dryBulbF", { ...place, dryBulbF: 250, relativeHumidityPct: 50 }],
    ["dryBulbF", { ...place, dryBulbF: Number.NaN, relativeHumidityPct: 50 }],
    ["pressurePsia", { ...place, pressurePsia: 30, relativeHumidityPct: 50 }],
  ])("%s out of range", (field, input) => {
    expect(() => moistAir(input)).toThrow(OutOfRangeError);
    expect(() => moistAir(input)).toThrow(new RegExp(field));
  });

  test("air above the boiling point at the site's pressure", () => {
    expect(() => moistAir({ dryBulbF: 190, relativeHumidityPct: 5, pressurePsia: 7 })).toThrow(/boiling/);
  });
});

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { OutOfRangeError } from "@/lib/engineering/errors";
import {
  absolutePressurePsia,
  gaugePressurePsig,
  lineSetAdjustmentOz,
  saturationPressurePsia,
  subcoolingF,
  superheatF,
  targetSuperheatF,
} from "@/lib/engineering/refrigerant";

const TABLE_SOURCE =
  "rows of the CoolProp 8.0.0 table, R-410A dew 40 °F 133.0535 psia, bubble 100 °F 333.2301 psia [C]";

describe(`superheat and subcooling: ${TABLE_SOURCE}`, () => {
  test("dew for superheat, at sea level and at 12.1 psia", () => {
    for (const sitePressurePsia of [14.696, 12.1]) {
      const suctionPressurePsig = 133.0535 - sitePressurePsia;
      const reading = {
        refrigerant: "R-410A",
        suctionPressurePsig,
        suctionLineF: 52,
        sitePressurePsia,
      } as const;
      expect(superheatF(reading)).toBeCloseTo(12, 6);
    }
  });

  test("bubble for subcooling", () => {
    const reading = {
      refrigerant: "R-410A",
      liquidPressurePsig: 333.2301 - 14.696,
      liquidLineF: 90,
      sitePressurePsia: 14.696,
    } as const;
    expect(subcoolingF(reading)).toBeCloseTo(10, 6);
  });

  test("forgetting the elevation shows: the same gauge reading at 12.1 psia is a colder dew temperature", () => {
    const reading = { refrigerant: "R-410A", suctionPressurePsig: 118.4, suctionLineF: 52 } as const;
    const seaLevel = superheatF({ ...reading, sitePressurePsia: 14.696 });
    expect(superheatF({ ...reading, sitePressurePsia: 12.1 })).toBeGreaterThan(seaLevel + 1);
  });

  test("the law behind both: a line at the saturation temperature has none", () => {
    fc.assert(
      fc.property(fc.double({ min: -30, max: 130, noNaN: true }), (tempF) => {
        const dewPsig = gaugePressurePsig(saturationPressurePsia("R-454B", tempF, "dew"), 14.696);
        const bubblePsig = gaugePressurePsig(saturationPressurePsia("R-454B", tempF, "bubble"), 14.696);
        const site = { refrigerant: "R-454B", sitePressurePsia: 14.696 } as const;
        expect(superheatF({ ...site, suctionPressurePsig: dewPsig, suctionLineF: tempF })).toBeCloseTo(0, 8);
        expect(subcoolingF({ ...site, liquidPressurePsig: bubblePsig, liquidLineF: tempF })).toBeCloseTo(
          0,
          8,
        );
      }),
      { seed: 61 },
    );
  });

  test("a refusal names the reading that was typed, in its own unit", () => {
    const reading = {
      refrigerant: "R-410A",
      suctionPressurePsig: 900,
      suctionLineF: 52,
      sitePressurePsia: 14.696,
    } as const;
    expect(() => superheatF(reading)).toThrow(/suctionPressurePsig 900 psig/);
    expect(() => superheatF({ ...reading, suctionPressurePsig: Number.NaN })).toThrow(OutOfRangeError);
    expect(() => superheatF({ ...reading, suctionPressurePsig: 118, sitePressurePsia: 0 })).toThrow(
      /sitePressurePsia/,
    );
  });
});

describe("gauge and absolute", () => {
  test("differ by the site's pressure", () => {
    expect(absolutePressurePsia(118.8, 12.1)).toBeCloseTo(130.9, 10);
    expect(gaugePressurePsig(130.9, 12.1)).toBeCloseTo(118.8, 10);
    expect(() => absolutePressurePsia(-14, 12.1)).toThrow(OutOfRangeError);
  });
});

const FORMULA_SOURCE = "(3·indoor WB − 80 − outdoor DB)/2; 64/96 → 8 °F [F]";
const CHART_SOURCE = "fixed-orifice charging chart [F]; the formula stays within ±3 °F of it";

describe(`target superheat: ${FORMULA_SOURCE}`, () => {
  test("64 °F wet bulb indoors, 96 °F outdoors", () => {
    expect(targetSuperheatF({ indoorWetBulbF: 64, outdoorDryBulbF: 96 })).toBe(8);
  });

  test.each([
    [85, 64, 11],
    [85, 66, 15],
    [85, 70, 22],
    [95, 66, 10],
    [95, 70, 18],
    [95, 76, 29],
  ])(
    `%d °F outdoors, %d °F wet bulb: chart %d °F. ${CHART_SOURCE}`,
    (outdoorDryBulbF, indoorWetBulbF, chart) => {
      expect(Math.abs(targetSuperheatF({ indoorWetBulbF, outdoorDryBulbF }) - chart)).toBeLessThanOrEqual(3);
    },
  );

  test("no valid test below 5 °F target, nor below 55 °F outdoors [F]", () => {
    // (3·60 − 80 − 90)/2 = 5 is the last valid one; one degree hotter outdoors is not.
    expect(targetSuperheatF({ indoorWetBulbF: 60, outdoorDryBulbF: 90 })).toBe(5);
    expect(() => targetSuperheatF({ indoorWetBulbF: 60, outdoorDryBulbF: 91 })).toThrow(
      /target superheat 4.5/,
    );
    expect(() => targetSuperheatF({ indoorWetBulbF: 60, outdoorDryBulbF: 54.9 })).toThrow(/outdoorDryBulbF/);
  });
});

describe("line set: (length − included) × oz/ft [C]", () => {
  test("50 ft, 15 included, 0.6 oz/ft adds 21 oz; a shorter line takes out", () => {
    expect(lineSetAdjustmentOz({ lineLengthFt: 50, includedLengthFt: 15, ouncesPerFt: 0.6 })).toBeCloseTo(
      21,
      10,
    );
    expect(lineSetAdjustmentOz({ lineLengthFt: 10, includedLengthFt: 15, ouncesPerFt: 0.6 })).toBeCloseTo(
      -3,
      10,
    );
    expect(() => lineSetAdjustmentOz({ lineLengthFt: -1, includedLengthFt: 15, ouncesPerFt: 0.6 })).toThrow(
      /lineLengthFt/,
    );
  });
});

import { describe, expect, it } from "vitest";
import { moistAir } from "@/lib/engineering/air";
import { OutOfRangeError } from "@/lib/engineering/errors";
import {
  householdMoistureLbPerH,
  LB_PER_PINT,
  outdoorAirMoistureLbPerH,
  PUBLISHED_SOURCES,
} from "@/lib/engineering/moisture";

const SOURCE = "Moisture Sources Associated with Potential Damage in Cold Climate Housing, 1988 (published)";
const indoor = moistAir({ dryBulbF: 75, relativeHumidityPct: 50, pressurePsia: 14.696 });

describe(`sources of water against ${SOURCE}`, () => {
  it("a family of four gives off 0.44 pint/h by breathing and perspiring", () => {
    const found = householdMoistureLbPerH({
      people: 4,
      personLbPerH: PUBLISHED_SOURCES.personPintsPerHour * LB_PER_PINT,
      householdPintsPerDay: 0,
      groundPintsPerDay: 0,
    });
    expect(found).toBeCloseTo(0.44 * 1.042, 3); // a pint of water weighs 1.042 lb
  });

  it("adds pints of the household and the ground over the day", () => {
    // 4 showers 2.0, dinner 1.2, dishes 0.68, ground 20: 23.88 pint/day · 1.0421 / 24
    const pints =
      4 * PUBLISHED_SOURCES.showerPints +
      PUBLISHED_SOURCES.dinnerForFourPints +
      PUBLISHED_SOURCES.dishesByHandPints;
    expect(pints).toBeCloseTo(3.88, 12);
    const found = householdMoistureLbPerH({
      people: 0,
      personLbPerH: 0.1,
      householdPintsPerDay: pints,
      groundPintsPerDay: 20,
    });
    expect(found).toBeCloseTo((23.88 * 1.0421) / 24, 3);
  });

  it("outdoor air: 60 cfm at 95/75 wb into 75/50 % brings in about 1.3 lb/h", () => {
    const outdoor = moistAir({ dryBulbF: 95, wetBulbF: 75, pressurePsia: 14.696 });
    const found = outdoorAirMoistureLbPerH({ outdoorAirCfm: 60, outdoor, indoor });
    // Design figures: 1,387 Btu/h latent by 0.68 at standard air; over 1,061 Btu/lb is 1.31; air at 14.3 ft³/lb is 7 % thinner.
    expect(Math.abs(found - (1_387 / 1_061) * (13.333 / outdoor.specificVolumeFt3PerLb))).toBeLessThan(0.03);
  });

  it("dry outdoor air dries the house", () => {
    const outdoor = moistAir({ dryBulbF: 40, relativeHumidityPct: 60, pressurePsia: 14.696 });
    expect(outdoorAirMoistureLbPerH({ outdoorAirCfm: 60, outdoor, indoor })).toBeLessThan(0);
  });

  it("refuses negative sources", () => {
    expect(() =>
      householdMoistureLbPerH({
        people: -1,
        personLbPerH: 0.1,
        householdPintsPerDay: 0,
        groundPintsPerDay: 0,
      }),
    ).toThrow(OutOfRangeError);
  });
});

import { describe, expect, it } from "vitest";
import { moistAir } from "@/lib/engineering/air";
import { moistureRemoval } from "@/lib/engineering/moisture";

const SOURCE =
  "lb/h = 4.5 · cfm · ΔW at standard air (computed); ASHRAE cooling-coil example (recalled, computed)";

describe(`moistureRemoval against ${SOURCE}`, () => {
  it("85 °F 50 %, 10,000 cfm to saturated 50 °F: condensate 226 lb/h", () => {
    const found = moistureRemoval({
      airflowCfm: 10_000,
      entering: moistAir({ dryBulbF: 85, relativeHumidityPct: 50, pressurePsia: 14.696 }),
      leaving: moistAir({ dryBulbF: 50, relativeHumidityPct: 100, pressurePsia: 14.696 }),
      densityRatio: 1,
    });
    expect(Math.abs(found.lbPerH / 226 - 1)).toBeLessThan(0.01); // ideal gas is up to 0.5 % low in W
    expect(found.gallonsPerHour).toBeCloseTo(found.lbPerH / 8.337, 6);
    expect(found.pintsPerDay).toBeCloseTo((found.lbPerH / 8.337) * 8 * 24, 4);
  });

  it("shows 4.5 · cfm · ΔW beside it: exact and quick agree at standard air, 13.33 ft³/lb", () => {
    const entering = moistAir({ dryBulbF: 67, relativeHumidityPct: 60, pressurePsia: 14.696 });
    const leaving = moistAir({ dryBulbF: 45, relativeHumidityPct: 95, pressurePsia: 14.696 });
    const found = moistureRemoval({ airflowCfm: 800, entering, leaving, densityRatio: 1 });
    const hand = 4.5 * 800 * (entering.humidityRatio - leaving.humidityRatio);
    expect(found.quickCheckLbPerH).toBeCloseTo(hand, 9);
    // 60 / 4.5 = 13.33 ft³/lb; this air is at 13.5.
    expect(Math.abs(found.lbPerH / hand - 13.333 / entering.specificVolumeFt3PerLb)).toBeLessThan(1e-4);
  });

  it("says so when the air got wetter", () => {
    const dry = moistAir({ dryBulbF: 75, relativeHumidityPct: 40, pressurePsia: 14.696 });
    const wet = moistAir({ dryBulbF: 72, relativeHumidityPct: 55, pressurePsia: 14.696 });
    expect(
      moistureRemoval({ airflowCfm: 800, entering: dry, leaving: wet, densityRatio: 1 }).lbPerH,
    ).toBeLessThan(0);
  });
});

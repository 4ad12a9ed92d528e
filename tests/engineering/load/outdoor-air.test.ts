import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { moistAir, quickLatentBtuh, quickSensibleBtuh } from "@/lib/engineering/air";
import { ImpossibleStateError } from "@/lib/engineering/errors";
import { outdoorAirLoad } from "@/lib/engineering/load";

const SOURCE =
  "60 cfm, 95/75 °F wet bulb to 75 °F, 50 %: about 2,767 Btu/h by enthalpy; 1.08 → 1,296; 0.68 → 1,387 [C]";
const PRESSURE = 14.696;
const indoor = moistAir({ dryBulbF: 75, relativeHumidityPct: 50, pressurePsia: PRESSURE });
const hot = moistAir({ dryBulbF: 95, wetBulbF: 75, pressurePsia: PRESSURE });

describe(`outdoor-air load: ${SOURCE}`, () => {
  const load = outdoorAirLoad({ airflowCfm: 60, outdoor: hot, indoor });

  test("total by enthalpy", () => {
    // The figure stands on real-gas states; ideal-gas humidity ratios are up to 0.5 % low.
    expect(Math.abs(load.totalBtuh / 2_767 - 1)).toBeLessThan(0.005);
  });

  test("the quick checks beside it", () => {
    const flow = { airflowCfm: 60, densityRatio: 1 };
    expect(quickSensibleBtuh({ ...flow, temperatureDifferenceF: 20 })).toBeCloseTo(1_296, 6);
    // 0.6 %: the same shortfall of the ideal gas, in grains.
    const grains = hot.grainsPerLb - indoor.grainsPerLb;
    expect(
      Math.abs(quickLatentBtuh({ ...flow, moistureDifferenceGrainsPerLb: grains }) / 1_387 - 1),
    ).toBeLessThan(0.006);
    // 1.08 leaves out the heat capacity of the vapour, 0.444·0.014 over 0.24.
    expect(Math.abs(load.sensibleBtuh / 1_296 - 1)).toBeLessThan(0.03);
  });

  test("wet, mild weather: little heat, much water", () => {
    const wet = outdoorAirLoad({
      airflowCfm: 60,
      outdoor: moistAir({ dryBulbF: 76, dewPointF: 74, pressurePsia: PRESSURE }),
      indoor,
    });
    expect(wet.sensibleBtuh).toBeLessThan(100);
    expect(wet.latentBtuh).toBeGreaterThan(load.latentBtuh);
    // 4.5·60·(W at 74 °F dew point, 0.0181 in any psychrometric table, less 0.0093).
    expect(wet.moistureLbPerH).toBeCloseTo(270 * (0.0181 - 0.0093), 1);
  });
});

describe("laws", () => {
  const air = fc.record({
    dryBulbF: fc.double({ min: 20, max: 105, noNaN: true }),
    relativeHumidityPct: fc.double({ min: 10, max: 100, noNaN: true }),
  });
  test("parts add up; indoor air brought in changes nothing; the reverse way is the reverse heat", () => {
    fc.assert(
      fc.property(air, fc.double({ min: 0, max: 500, noNaN: true }), (state, airflowCfm) => {
        const outdoor = moistAir({ ...state, pressurePsia: PRESSURE });
        const load = outdoorAirLoad({ airflowCfm, outdoor, indoor });
        expect(load.sensibleBtuh + load.latentBtuh).toBeCloseTo(load.totalBtuh, 6);
        expect(outdoorAirLoad({ airflowCfm, outdoor: indoor, indoor }).totalBtuh).toBeCloseTo(0, 9);
        const back = outdoorAirLoad({ airflowCfm, outdoor: indoor, indoor: outdoor });
        expect(back.totalBtuh).toBeCloseTo(-load.totalBtuh, 6);
      }),
      { seed: 83 },
    );
  });

  test("thin air carries less; two sites are refused", () => {
    const at = (pressurePsia: number) => ({
      outdoor: moistAir({ dryBulbF: 95, humidityRatio: 0.01, pressurePsia }),
      indoor: moistAir({ dryBulbF: 75, humidityRatio: 0.008, pressurePsia }),
    });
    const low = outdoorAirLoad({ airflowCfm: 60, ...at(PRESSURE) });
    const high = outdoorAirLoad({ airflowCfm: 60, ...at(12.1) });
    expect(high.totalBtuh / low.totalBtuh).toBeCloseTo(12.1 / PRESSURE, 6);
    expect(() => outdoorAirLoad({ airflowCfm: 60, outdoor: hot, indoor: at(12.1).indoor })).toThrow(
      ImpossibleStateError,
    );
  });
});

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { mixAir, moistAir } from "@/lib/engineering/air";
import { ImpossibleStateError } from "@/lib/engineering/errors";

const SOURCE = "ASHRAE Handbook, Fundamentals, moist-air mixing example [M+, C]";
const PRESSURE = 14.696;

describe(`mixing: ${SOURCE}`, () => {
  test("5,000 cfm at 40/35 °F with 15,000 cfm at 75 °F, 50 % gives 65.8 °F dry bulb, 56.6 °F wet bulb", () => {
    const mixed = mixAir([
      { airflowCfm: 5_000, air: moistAir({ dryBulbF: 40, wetBulbF: 35, pressurePsia: PRESSURE }) },
      {
        airflowCfm: 15_000,
        air: moistAir({ dryBulbF: 75, relativeHumidityPct: 50, pressurePsia: PRESSURE }),
      },
    ]);
    // Half of the printed digit.
    expect(Math.abs(mixed.dryBulbF - 65.8)).toBeLessThan(0.05);
    expect(Math.abs(mixed.wetBulbF - 56.6)).toBeLessThan(0.05);
  });
});

const indoorAir = fc.record({
  dryBulbF: fc.double({ min: 60, max: 95, noNaN: true }),
  relativeHumidityPct: fc.double({ min: 10, max: 60, noNaN: true }),
});
const flow = fc.double({ min: 1, max: 5_000, noNaN: true });

describe("laws of mixing", () => {
  test("dry air, water and heat are conserved, in any order", () => {
    fc.assert(
      fc.property(indoorAir, flow, indoorAir, flow, (one, oneCfm, other, otherCfm) => {
        const a = { airflowCfm: oneCfm, air: moistAir({ ...one, pressurePsia: PRESSURE }) };
        const b = { airflowCfm: otherCfm, air: moistAir({ ...other, pressurePsia: PRESSURE }) };
        const mixed = mixAir([a, b]);
        const massA = oneCfm / a.air.specificVolumeFt3PerLb;
        const massB = otherCfm / b.air.specificVolumeFt3PerLb;
        const water = massA * a.air.humidityRatio + massB * b.air.humidityRatio;
        const heat = massA * a.air.enthalpyBtuPerLb + massB * b.air.enthalpyBtuPerLb;
        expect((massA + massB) * mixed.humidityRatio).toBeCloseTo(water, 9);
        expect((massA + massB) * mixed.enthalpyBtuPerLb).toBeCloseTo(heat, 6);
        expect(mixAir([b, a]).dryBulbF).toBeCloseTo(mixed.dryBulbF, 9);
      }),
      { seed: 21 },
    );
  });

  test("refuses no stream, no flow, two sites and fog", () => {
    const air = moistAir({ dryBulbF: 75, relativeHumidityPct: 50, pressurePsia: PRESSURE });
    const high = moistAir({ dryBulbF: 75, relativeHumidityPct: 50, pressurePsia: 12 });
    const cold = moistAir({ dryBulbF: 10, relativeHumidityPct: 100, pressurePsia: PRESSURE });
    const steamy = moistAir({ dryBulbF: 95, relativeHumidityPct: 100, pressurePsia: PRESSURE });
    expect(() => mixAir([])).toThrow(ImpossibleStateError);
    expect(() => mixAir([{ airflowCfm: 0, air }])).toThrow(/airflow/);
    expect(() =>
      mixAir([
        { airflowCfm: 1, air },
        { airflowCfm: 1, air: high },
      ]),
    ).toThrow(/different sites/);
    expect(() =>
      mixAir([
        { airflowCfm: 100, air: cold },
        { airflowCfm: 100, air: steamy },
      ]),
    ).toThrow(ImpossibleStateError);
  });
});

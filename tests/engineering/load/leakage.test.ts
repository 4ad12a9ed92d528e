import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { ImpossibleStateError } from "@/lib/engineering/errors";
import { leakageAreaIn2, leakageFlowCfm, type ShelterClass, type Storeys } from "@/lib/engineering/load";

const AREA_SOURCE = "A_L = 0.186·Q4·√(ρ/2Δp), Q4 = Q50·0.08^0.65, about 0.0552·Q50 [C]";
const FLOW_SOURCE = "A_L·√(Cs·|Δt| + Cw·U²), stack 0.0150/0.0299/0.0449, ASHRAE Fundamentals ch. 16 [M+]";

describe(`leakage area: ${AREA_SOURCE}`, () => {
  test("2,000 cfm at 50 Pa: 110.4 in²", () => {
    // "About": the factor worked out is 0.05515, printed 0.0552.
    expect(Math.abs(leakageAreaIn2({ leakageCfm50: 2_000 }) / 110.4 - 1)).toBeLessThan(0.002);
  });

  test("refuses by name", () => {
    expect(() => leakageAreaIn2({ leakageCfm50: -1 })).toThrow(/leakageCfm50/);
  });
});

const still = { leakageAreaIn2: 100, shelterClass: 3, windMph: 0 } as const;

describe(`leakage flow: ${FLOW_SOURCE}`, () => {
  test.each([
    // 100·√(Cs·36): √0.54, √1.0764, √1.6164.
    [1, 73.485],
    [2, 103.749],
    [3, 127.138],
  ] as const)("stack alone, %d storeys at 36 °F: %d cfm", (storeys, expected) => {
    expect(leakageFlowCfm({ ...still, storeys, temperatureDifferenceF: 36 })).toBeCloseTo(expected, 2);
  });

  // 100·√(Cw·100) at 10 mph; wind table by class (rows) and storeys: ASHRAE Fundamentals ch. 16 [M+].
  test.each([
    [1, 1, 0.0119],
    [1, 2, 0.0157],
    [1, 3, 0.0184],
    [2, 1, 0.0092],
    [2, 2, 0.0121],
    [2, 3, 0.0143],
    [3, 1, 0.0065],
    [3, 2, 0.0086],
    [3, 3, 0.0101],
    [4, 1, 0.0039],
    [4, 2, 0.0051],
    [4, 3, 0.006],
    [5, 1, 0.0012],
    [5, 2, 0.0016],
    [5, 3, 0.0018],
  ] as const)("wind alone, class %d, %d storeys: coefficient %d", (shelterClass, storeys, coefficient) => {
    const flow = leakageFlowCfm({
      leakageAreaIn2: 100,
      storeys,
      shelterClass,
      temperatureDifferenceF: 0,
      windMph: 10,
    });
    expect((flow / 100) ** 2 / 100).toBeCloseTo(coefficient, 9);
  });

  test("laws: same hot or cold outside; more wind, more storeys or less shelter is never less air", () => {
    const storeys = fc.constantFrom<Storeys>(1, 2);
    const shelter = fc.constantFrom<ShelterClass>(2, 3, 4, 5);
    const difference = fc.double({ min: 1, max: 80, noNaN: true });
    fc.assert(
      fc.property(
        storeys,
        shelter,
        difference,
        fc.double({ min: 0, max: 40, noNaN: true }),
        (s, c, dt, wind) => {
          const input = {
            leakageAreaIn2: 90,
            storeys: s,
            shelterClass: c,
            temperatureDifferenceF: dt,
            windMph: wind,
          };
          const flow = leakageFlowCfm(input);
          expect(leakageFlowCfm({ ...input, temperatureDifferenceF: -dt })).toBe(flow);
          expect(leakageFlowCfm({ ...input, windMph: wind + 1 })).toBeGreaterThan(flow);
          expect(leakageFlowCfm({ ...input, storeys: (s + 1) as Storeys })).toBeGreaterThan(flow);
          expect(leakageFlowCfm({ ...input, shelterClass: (c - 1) as ShelterClass })).toBeGreaterThanOrEqual(
            flow,
          );
        },
      ),
      { seed: 82 },
    );
  });

  test("refuses what the table does not hold", () => {
    const input = { ...still, temperatureDifferenceF: 30 };
    expect(() => leakageFlowCfm({ ...input, storeys: 4 as Storeys })).toThrow(ImpossibleStateError);
    expect(() => leakageFlowCfm({ ...input, storeys: 2, shelterClass: 0 as ShelterClass })).toThrow(
      ImpossibleStateError,
    );
    expect(() => leakageFlowCfm({ ...input, storeys: 2, windMph: -1 })).toThrow(/windMph/);
  });
});

import { describe, expect, it } from "vitest";
import { COIL, coilNumbers, type PerformancePoint, performanceAt } from "@/lib/engineering/equipment";
import { coolingTableAt, simulateYear, type TableSystem } from "@/lib/engineering/simulation";
import { lookUpCooling } from "@/lib/engineering/simulation/cooling-table";
import { BASE, SYSTEM, steadyWeather } from "./fixtures";

/** Straight lines in every axis, so that each number can be worked out by hand: total 100·(400 − outdoor + wet bulb) + airflow. */
const total = (outdoorDbF: number, enteringWbF: number, airflowCfm: number) =>
  100 * (400 - outdoorDbF + enteringWbF) + airflowCfm;
/** Sensible: 600 more a °F of dry bulb, 900 less a °F of wet bulb. */
const sensible = (enteringWbF: number, enteringDbF: number) =>
  24_000 + 600 * (enteringDbF - 75) - 900 * (enteringWbF - 63);

function lines(dryBulbs: readonly number[]): readonly PerformancePoint[] {
  return [75, 95, 115].flatMap((outdoorDbF) =>
    [59, 63, 71].flatMap((enteringWbF) =>
      dryBulbs.flatMap((enteringDbF) =>
        [800, 1_200].map((airflowCfm) => ({
          outdoorDbF,
          enteringWbF,
          enteringDbF,
          airflowCfm,
          totalBtuh: total(outdoorDbF, enteringWbF, airflowCfm),
          sensibleBtuh: sensible(enteringWbF, enteringDbF),
          powerW: null,
        })),
      ),
    ),
  );
}

function lookedUp(table: ReturnType<typeof coolingTableAt>, outdoorF: number, wetBulbF: number, dbF: number) {
  const out = coilNumbers(14.696);
  out[COIL.outdoorDbF] = outdoorF;
  out[COIL.enteringDbF] = dbF;
  out[COIL.solvedF] = wetBulbF;
  lookUpCooling(table, out);
  return { total: out[COIL.totalBtuh], sensible: out[COIL.sensibleBtuh], water: out[COIL.moistureLbPerH] };
}

const TABLE = coolingTableAt(lines([75, 80]), 1_000);

describe("a maker's table at one airflow", () => {
  it.each([
    [82, 61.5, 76],
    [95, 63, 75],
    [114, 70.9, 79.9],
    [100, 66, 77.5],
  ])("says inside the table what interpolation by hand says (%d, %d, %d °F)", (outdoorF, wetBulbF, dbF) => {
    const found = lookedUp(TABLE, outdoorF, wetBulbF, dbF);
    expect(found.total).toBeCloseTo(total(outdoorF, wetBulbF, 1_000), 6);
    expect(found.sensible).toBeCloseTo(sensible(wetBulbF, dbF), 6);
    const checked = performanceAt(lines([75, 80]), {
      outdoorDbF: outdoorF,
      enteringWbF: wetBulbF,
      enteringDbF: dbF,
      airflowCfm: 1_000,
    });
    expect(found.total).toBeCloseTo(checked.totalBtuh, 6);
    expect(found.sensible).toBeCloseTo(checked.sensibleBtuh, 6);
  });

  it("keeps the coolest outdoor line below it", () => {
    expect(lookedUp(TABLE, 60, 63, 75).total).toBeCloseTo(total(75, 63, 1_000), 6);
  });

  it("dries along the sensible line below the lowest wet bulb, up to the total and no further", () => {
    // 57 °F: sensible 24,000 + 900·6 = 29,400 of a total held at 59 °F of 100·(400 − 95 + 59) + 1,000 = 37,400.
    expect(lookedUp(TABLE, 95, 57, 75)).toMatchObject({ total: 37_400, sensible: 29_400 });
    // 45 °F: the line would give 40,200, more than there is: a dry coil.
    expect(lookedUp(TABLE, 95, 45, 75)).toMatchObject({ total: 37_400, sensible: 37_400, water: 0 });
  });

  it("goes on along the dry-bulb line for a room cooler than the table", () => {
    expect(lookedUp(TABLE, 95, 63, 72).sensible).toBeCloseTo(24_000 - 3 * 600, 6);
  });

  it("finds the dry-bulb line of a table with one dry bulb from its own bypass factor", () => {
    // The rated point of the equipment tests: 80/67 °F, 1,200 cfm, 36,000 Btu/h at 0.75 is a coil with BF = 0.134 [C].
    const line = { enteringWbF: 67, enteringDbF: 80, airflowCfm: 1_200, totalBtuh: 36_000, powerW: null };
    const table = coolingTableAt([{ ...line, outdoorDbF: 95, sensibleBtuh: 27_000 }], 1_200);
    const slope = (lookedUp(table, 95, 67, 80).sensible ?? 0) - (lookedUp(table, 95, 67, 79).sensible ?? 0);
    expect(slope).toBeCloseTo(1.08 * 1_200 * (1 - 0.134), -1);
  });

  it("refuses an airflow the table does not hold, and a year hotter than it", () => {
    expect(() => coolingTableAt(lines([75, 80]), 1_300)).toThrow(/airflowCfm/);
    const { a0LbPerH: _a, approach: _b, frostLimitF: _c, ceiling: _d, ...common } = SYSTEM;
    const system: TableSystem = {
      ...common,
      settlingMin: 0,
      stages: [{ airflowCfm: 1_000, fanW: 400, table: TABLE }],
    };
    const hot = { ...BASE, system, weather: steadyWeather(24, 116, 0.01) };
    expect(() => simulateYear(hot)).toThrow(/outdoorDbF/);
    expect(() => simulateYear({ ...hot, system: { ...system, settlingMin: 5 } })).toThrow(/settlingMin/);
  });

  it("meets a steady load by hand: run share = sensible load over sensible capacity, balances closed", () => {
    const { a0LbPerH: _a, approach: _b, frostLimitF: _c, ceiling: _d, ...common } = SYSTEM;
    const system: TableSystem = {
      ...common,
      settlingMin: 0,
      // Full at once and from the first second, so that the share is the load over the capacity.
      startTimeConstantS: 1,
      stages: [{ airflowCfm: 1_000, fanW: 0, table: TABLE }],
    };
    const house = {
      ...BASE.house,
      leakageAreaIn2: 0,
      gainsBtuhByHour: Array.from({ length: 24 }, () => 3_000),
      moistureLbPerHByHour: Array.from({ length: 24 }, () => 0.5),
    };
    const year = simulateYear({
      ...BASE,
      house,
      system,
      ventilation: { kind: "none" },
      weather: steadyWeather(24 * 20, 95, 0.0092),
    });
    // About 75 °F inside: 420·20 + 3,000 = 11,400 Btu/h; humidity settles where the coil takes 0.5 lb/h.
    const meanF = year.hourF.reduce((sum, one) => sum + one, 0) / year.hourF.length;
    const load = 420 * (95 - meanF) + 3_000;
    const hours = year.firstStageHours;
    expect(year.drainedLb).toBeCloseTo(0.5 * 480, -1);
    const capacity = (load * 480) / hours;
    // Mean sensible capacity lies between the table's at the room's wet bulb limits; total less 0.5 lb/h·1,094 Btu/lb of latent by run hour.
    const latent = (0.5 * 1_094 * 480) / hours;
    expect(capacity + latent).toBeGreaterThan(total(95, 59, 1_000) * 0.99);
    expect(capacity + latent).toBeLessThan(total(95, 71, 1_000));
    expect(Math.abs(year.heat.relative)).toBeLessThan(1e-6);
    expect(Math.abs(year.water.relative)).toBeLessThan(1e-6);
  });
});

import { describe, expect, it } from "vitest";
import { compareOptions, simulateYear, type YearInput } from "@/lib/engineering/simulation";
import { BASE, DESERT, HOUSE, SETTINGS, SYSTEM, stageAt, steadyWeather } from "./fixtures";

const SOURCE =
  "closed forms of first-order balances, hand balances (physics); cycling law N = 4·Nmax·X(1 − X) of Henderson & Rengarajan 1996 [F]";

const NO_GAINS = Array.from({ length: 24 }, () => 0);
/** Conduction only: no leaks, gains, sun or water. */
const BARE = {
  ...HOUSE,
  leakageAreaIn2: 0,
  apertures: [],
  gainsBtuhByHour: NO_GAINS,
  moistureLbPerHByHour: NO_GAINS,
};
/** A house that is one lump: the mass is all but cut off. */
const ONE_LUMP = { ...BARE, massCouplingBtuhPerF: 0, massCapacitanceBtuPerF: 100, radiantShare: 0 };
const STILL: YearInput = { ...BASE, ventilation: { kind: "none" }, house: ONE_LUMP };

const year = simulateYear(BASE);

describe(`against ${SOURCE}`, () => {
  it("step response: an empty house warms as exp(−t UA/C)", () => {
    // The two weeks run before settle to 66 °F; so the weather steps to 60 °F in hour 400, heating set below it all.
    const weather = steadyWeather(480, 66, 0.006);
    weather.dryBulbF.fill(60, 400);
    const controls = { ...BASE.controls, heatingSetpointF: 50 };
    const found = simulateYear({ ...STILL, controls, weather });
    expect(found.hourF[399]).toBeCloseTo(66, 3);
    // Hour 400 ramps linearly from 66 to 60 (values stand at the hour's end): the response to a ramp of slope r is r(t − τ(1 − exp(−t/τ))).
    const tau = 2_500 / 420;
    const afterRamp = 66 - 6 * (1 - tau * (1 - Math.exp(-1 / tau)));
    // Each minute sees the outdoors at its middle; the trapezoid rule is then off by less than 1e-3 °F.
    for (const hours of [0, 1, 3, 6, 12]) {
      expect(
        Math.abs((found.hourF[400 + hours] ?? 0) - (60 + (afterRamp - 60) * Math.exp(-hours / tau))),
      ).toBeLessThan(1e-3);
    }
  });

  it("steady heating: UA·ΔT alone, 420 · (69 − 30) = 16,380 Btu/h", () => {
    const found = simulateYear({ ...STILL, weather: steadyWeather(48, 30, 0.002) });
    expect(found.heat.out / 48).toBeCloseTo(16_380, 0);
    expect(found.auxiliaryKwh).toBe(0);
    expect(found.hourF[47]).toBeCloseTo(69, 6);
  });

  it("steady cooling: the coil takes what enclosure and fan let in, 420 · ΔT + 360 · 3.412 · the share it runs", () => {
    const controls = { ...BASE.controls, dryAbovePct: 20, heatingSetpointF: 60 };
    const found = simulateYear({ ...STILL, controls, weather: steadyWeather(240, 95, 0.004) });
    const meanF = found.hourF.reduce((sum, one) => sum + one, 0) / 240;
    const ran = found.firstStageHours / 240;
    const load = 420 * (95 - meanF) + ran * 360 * 3.412;
    expect(found.heat.out / 240 / load).toBeCloseTo(1, 2);
    // Ventilation off and no leaks: what came in is what the enclosure and the fan let in.
    expect(found.heat.in / 240 / load).toBeCloseTo(1, 2);
  });

  it("auxiliary heat: at 5 °F the heat pump's line gives 20,000 − 12 · 400 = 15,200 of 26,880 Btu/h; 3.423 kW are missing", () => {
    const found = simulateYear({ ...STILL, weather: steadyWeather(48, 5, 0.0005) });
    expect(found.auxiliaryKwh / 48).toBeCloseTo((26_880 - 15_200) / 3_412, 3);
  });

  it("steady water: inside 0.6 lb/h against outdoor air, W = Wo + 0.6/ṁ", () => {
    const house = {
      ...ONE_LUMP,
      moistureLbPerHByHour: NO_GAINS.map(() => 0.6),
      moistureCapacitanceMultiple: 1,
    };
    const ventilation = { kind: "continuous", airflowCfm: 100 } as const;
    const weather = steadyWeather(480, 69, 0.004);
    const found = simulateYear({ ...STILL, house, ventilation, weather });
    // v = 0.370486 · 528.67 · (1 + 1.607858 · 0.004)/14.696 = 13.4134 ft³/lb; 6,000/13.4134 = 447.31 lb/h; W = 0.0053413
    expect(found.water.in).toBeCloseTo(0.6 * 480, 6);
    // 0.0053413: vapour 14.696 · 0.0053413/(0.621945 + 0.0053413) = 0.12513 psia over 0.35046 (69 °F, steam tables) = 35.7 %
    expect(Math.abs((found.hourRhPct[479] ?? 0) - 35.7)).toBeLessThan(0.1);
  });

  it("cycling: N = 4 Nmax X(1 − X)", () => {
    // Dry coil, first-order start all but instant; band 0.5 + 0.5 °F and 10,000 Btu/°F: cycles of more than 40 minutes.
    const settings = { ...SETTINGS, minimumCompressorRunMin: 0, minimumCompressorRestMin: 0 };
    const controls = { ...BASE.controls, settings, dryAbovePct: 20, heatingSetpointF: 60 };
    const system = { ...SYSTEM, startTimeConstantS: 1 };
    const house = { ...ONE_LUMP, airCapacitanceBtuPerF: 10_000, moistureLbPerHByHour: NO_GAINS };
    const at = (outdoorF: number) =>
      simulateYear({
        ...STILL,
        house: { ...house, moistureLbPerHByHour: NO_GAINS.map(() => 0.05) },
        controls,
        system,
        ventilation: { kind: "continuous", airflowCfm: 60 },
        weather: steadyWeather(720, outdoorF, 0.0075),
      });
    const rates = [82, 88, 94, 100, 106].map((outdoorF) => {
      const found = at(outdoorF);
      const share = found.firstStageHours / 720;
      return { share, perShape: found.starts / 720 / (share * (1 - share)) };
    });
    expect(rates[0]?.share).toBeLessThan(0.3);
    expect(rates.at(-1)?.share).toBeGreaterThan(0.5);
    const mean = rates.reduce((sum, one) => sum + one.perShape, 0) / rates.length;
    // The thermostat looks once a minute, which overshoots by up to a minute a turn: 8 %.
    for (const { perShape } of rates) expect(Math.abs(perShape / mean - 1)).toBeLessThan(0.08);
  });
});

describe("the year of a coastal house", () => {
  it("heat and water close to 1e-6 and better", () => {
    expect(Math.abs(year.heat.relative)).toBeLessThan(1e-9);
    expect(Math.abs(year.water.relative)).toBeLessThan(1e-9);
    expect(year.heat.in).toBeGreaterThan(1e7);
  });

  it("counts every hour once", () => {
    expect(year.dryHours + year.hoursAboveLimit).toBeCloseTo(8_760, 6);
    expect(year.humidityHours.reduce((sum, one) => sum + one, 0)).toBeCloseTo(8_760, 6);
    expect(year.hoursAboveLimitByMonth.reduce((sum, one) => sum + one, 0)).toBeCloseTo(
      year.hoursAboveLimit,
      6,
    );
    const cooling = year.coolingHoursByMonth.reduce((sum, one) => sum + one, 0);
    expect(cooling).toBeCloseTo(year.firstStageHours + year.secondStageHours, 6);
    // January has 744 hours of the year's, and its mean is theirs.
    const january = year.hourRhPct.subarray(0, 744).reduce((sum, one) => sum + one, 0) / 744;
    expect(year.meanRhPctByMonth[0]).toBeCloseTo(january, 9);
    expect(year.humidityHours.slice(61).reduce((sum, one) => sum + one, 0)).toBeLessThanOrEqual(
      year.hoursAboveLimit,
    );
    const runs = year.runsByMinute.reduce((sum, one) => sum + one, 0);
    expect(Math.abs(runs - year.starts)).toBeLessThanOrEqual(1);
  });

  it("the same input gives the same bytes", () => {
    expect(JSON.stringify(simulateYear(BASE))).toBe(JSON.stringify(year));
  });

  it("halving the step changes the dry hours by less than 1 %", () => {
    const half = simulateYear({ ...BASE, stepsPerMinute: 2 });
    expect(Math.abs(half.dryHours / year.dryHours - 1)).toBeLessThan(0.01);
  });

  it("a desert year is drier than a coastal one", () => {
    expect(simulateYear({ ...BASE, weather: DESERT }).dryHours).toBeGreaterThan(year.dryHours + 1_000);
  });

  it("less airflow, more dry hours", () => {
    const at = (cfm: number) =>
      simulateYear({ ...BASE, system: { ...SYSTEM, stages: [stageAt(cfm, 100)] } }).dryHours;
    const [low, middle, high] = [at(700), at(900), at(1_200)];
    expect(low).toBeGreaterThan(middle);
    expect(middle).toBeGreaterThan(high);
  });

  it("twice the size, all else in proportion: shorter runs, and wetter where the fan runs on", () => {
    const settings = { ...SETTINGS, fanRunOnAfterCoolingS: 90 };
    const controls = { ...BASE.controls, settings };
    const double = {
      ...SYSTEM,
      a0LbPerH: 2 * SYSTEM.a0LbPerH,
      approach: { kind: "grows with capacity", ratedApproachF: 10.4, ratedTotalBtuh: 72_000 },
      ceiling: SYSTEM.ceiling.map((point) => ({ ...point, capacityBtuh: 2 * point.capacityBtuh })),
      stages: [{ ...stageAt(1_800, 100), minimumCapacityBtuh: 18_000 }],
      coilHoldsLb: 2 * SYSTEM.coilHoldsLb,
      firstEvaporationLbPerH: 2 * SYSTEM.firstEvaporationLbPerH,
    } as const;
    const right = simulateYear({ ...BASE, controls });
    const big = simulateYear({ ...BASE, controls, system: double });
    expect(big.meanRunMin ?? 99).toBeLessThan((right.meanRunMin ?? 0) / 2);
    expect(big.starts).toBeGreaterThan(right.starts);
    expect(big.hoursAboveLimit).toBeGreaterThan(right.hoursAboveLimit);
  });

  it("two stages with a lag of 15 minutes: it closes, and a later second stage has the smaller share", () => {
    const system = { ...SYSTEM, settlingMin: 15, stages: [stageAt(600, 50), stageAt(900, 100)] };
    const at = (secondStageStartOffsetF: number) => {
      const settings = { ...SETTINGS, secondStageStartOffsetF, stepBackToFirstStage: true };
      return simulateYear({ ...BASE, system, controls: { ...BASE.controls, settings } });
    };
    const [early, late] = [at(1), at(3)];
    for (const one of [early, late]) {
      expect(Math.abs(one.heat.relative)).toBeLessThan(1e-9);
      expect(Math.abs(one.water.relative)).toBeLessThan(1e-9);
    }
    expect(early.secondStageShare).toBeGreaterThan(late.secondStageShare ?? 1);
    // Half the capacity first: longer runs than the one full stage, fewer starts.
    expect(late.meanRunMin).toBeGreaterThan(year.meanRunMin ?? Number.POSITIVE_INFINITY);
    expect(late.starts).toBeLessThan(year.starts);
  });

  it("options: a dehumidifier dries, a fan that never rests wets; driest first", () => {
    const settings = { ...SETTINGS, fanBetweenCalls: "on" as const };
    const dryer = {
      ratedPintsPerDay: 70,
      ratedDbF: 73,
      ratedRhPct: 60,
      powerW: 500,
      startAbovePct: 57,
      stopBelowPct: 53,
    };
    const found = compareOptions(BASE, [
      { name: "fan on", controls: { ...BASE.controls, settings } },
      { name: "as set" },
      { name: "dehumidifier", dehumidifier: dryer },
    ]);
    expect(found.map((one) => one.name)).toEqual(["dehumidifier", "as set", "fan on"]);
    expect(found[0]?.year.dehumidifierPints).toBeGreaterThan(0);
    expect(found[2]?.year.reEvaporatedLb).toBeGreaterThan(0);
    for (const { year: one } of found) {
      expect(Math.abs(one.heat.relative)).toBeLessThan(1e-9);
      expect(Math.abs(one.water.relative)).toBeLessThan(1e-9);
    }
  });
});

it("refuses what it cannot run, by its field", () => {
  const gap = steadyWeather(48, 80, 0.01);
  gap.windMph[7] = Number.NaN;
  expect(() => simulateYear({ ...BASE, weather: gap })).toThrow(/no windMph in hour 8/);
  const cold = { ...SYSTEM, auxiliaryKw: 0, heatPumpAt17FBtuh: 0, heatPumpAt47FBtuh: 0 };
  expect(() => simulateYear({ ...STILL, system: cold, weather: steadyWeather(96, 0, 0.0005) })).toThrow(
    /41 to 119/,
  );
  expect(() => simulateYear({ ...BASE, weather: steadyWeather(48, 118, 0.01) })).toThrow(/outdoorDbF/);
  expect(() => compareOptions(BASE, [])).toThrow(/1 to 12/);
});

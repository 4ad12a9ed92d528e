import { describe, expect, it } from "vitest";
import {
  type ForecastInput,
  type ForecastOption,
  forecastYears,
  gatherForecast,
  houseMembers,
  type MemberYear,
  prepareForecast,
  shiftWeather,
  stableText,
  typicalHours,
} from "@/lib/engineering/simulation";
import { seededDraws } from "@/lib/engineering/simulation/seeded-draws";
import { BASE, COASTAL, HOUSE, SYSTEM, stageAt, steadyWeather } from "./fixtures";
import { LOAD } from "./load-of-a-house";

const SOURCE =
  "laws of an ensemble (computed); humidity ratio of saturated air at 60 and 63 °F, 14.696 psia: 0.01109 and 0.01236, psychrometric tables (from memory, sure)";

const { system, controls, ventilation, dehumidifier } = BASE;
const AS_SET: ForecastOption = { name: "as set", system, controls, ventilation, dehumidifier };
const HIGH: ForecastOption = {
  ...AS_SET,
  name: "high airflow",
  system: { ...SYSTEM, stages: [stageAt(1_200, 100)] },
};

/** Ten days of hot days and mild nights: short, so that this file stays quick. */
function tenDays() {
  const weather = steadyWeather(240, 85, 0.014);
  for (let hour = 0; hour < 240; hour++) {
    weather.dryBulbF[hour] = 80 + 12 * Math.sin((2 * Math.PI * (hour - 9)) / 24);
    weather.dewPointF[hour] = 66;
  }
  return weather;
}

const INPUT: ForecastInput = {
  house: { kind: "given", house: HOUSE },
  weather: tenDays(),
  options: [AS_SET, HIGH],
  humidityLimitPct: 55,
  members: 5,
  seed: 7,
};

describe(`a forecast: ${SOURCE}`, () => {
  const prepared = prepareForecast(INPUT);
  const all = [...forecastYears(prepared)];

  it("begins with the central house of every option and then gives ranges around it", () => {
    expect(all.map((year) => [year.member, year.option]).slice(0, 4)).toEqual([
      [0, 0],
      [0, 1],
      [1, 0],
      [1, 1],
    ]);
    expect(prepared.years).toBe(10);
    const early = gatherForecast(prepared, all.slice(0, 1));
    expect(early.options[0]?.ranges.hoursAboveLimit.low).toBe(early.options[0]?.ranges.hoursAboveLimit.high);
    expect(early.options[1]).toBeNull();
    const done = gatherForecast(prepared, all);
    for (const option of done.options) {
      expect(option?.membersRun).toBe(5);
      const { low, central, high } = option?.ranges.hoursAboveLimit ?? { low: 1, central: 0, high: 0 };
      expect(low).toBeLessThanOrEqual(central);
      expect(central).toBeLessThanOrEqual(high);
      expect(high).toBeGreaterThan(low);
      expect(option?.balanceError).toBeLessThan(1e-9);
    }
  });

  it("shared between two workers, in whatever order, it is the same to the byte", () => {
    const second = [...forecastYears(prepared, { index: 1, of: 2 })];
    const first = [...forecastYears(prepareForecast(INPUT), { index: 0, of: 2 })];
    const shared: MemberYear[] = [...second, ...first.reverse()];
    expect(stableText(gatherForecast(prepared, shared))).toBe(stableText(gatherForecast(prepared, all)));
  });

  it("another seed gives other houses, the same one the same", () => {
    const values = (seed: number) =>
      prepareForecast({ ...INPUT, seed }).ensemble.members.map((one) => one.values);
    expect(values(7)).toEqual(values(7));
    expect(values(8).slice(1)).not.toEqual(values(7).slice(1));
    expect(values(8)[0]).toEqual(values(7)[0]);
  });

  it("stops where it is told to", () => {
    const years = forecastYears(prepared);
    years.next();
    years.return();
    expect(years.next().done).toBe(true);
  });

  it("draws the hottest day minute by minute, with rooms as the hours have them", () => {
    const [option] = gatherForecast(prepared, all).options;
    const { hotDay, year } = option?.pictures ?? {};
    expect(hotDay?.minutes?.roomF).toHaveLength(1_440);
    expect(hotDay?.minutes?.roomF[59]).toBe(hotDay?.roomF[0]);
    const running = hotDay?.minutes?.stage.filter((stage) => stage > 0).length;
    expect(hotDay?.runMinutes.reduce((sum, one) => sum + one, 0)).toBeCloseTo(running ?? -1, 6);
    expect(year?.meanRhPct).toHaveLength(10);
    // The days' running adds up to the stages', and the months' to both.
    const cooling = (option?.central.firstStageHours ?? 0) + (option?.central.secondStageHours ?? 0);
    expect(cooling).toBeGreaterThan(20);
    expect(year?.runHours.reduce((sum, one) => sum + one, 0)).toBeCloseTo(cooling, 6);
    expect(option?.coolingHoursByMonth.reduce((sum, one) => sum + one.central, 0)).toBeCloseTo(cooling, 6);
  });

  it("refuses options that cannot be told apart, and members that are none", () => {
    expect(() => prepareForecast({ ...INPUT, options: [AS_SET, AS_SET] })).toThrow(/same name/);
    expect(() => prepareForecast({ ...INPUT, options: [] })).toThrow(/1 to 12/);
    expect(() => prepareForecast({ ...INPUT, members: 2.5 })).toThrow(/whole number/);
    expect(() => prepareForecast({ ...INPUT, members: 0 })).toThrow(/1 to 100/);
  });
});

describe("members", () => {
  it("ten draws use every tenth of every range once", () => {
    const draws = seededDraws(3, 10, 4);
    for (let number = 0; number < 4; number++) {
      const tenths = draws.map((draw) => Math.floor(10 * (draw[number] ?? 0))).sort((a, b) => a - b);
      expect(tenths).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8, 9]);
    }
  });

  it("vary what is uncertain between its low and high, leave what someone has set, and centre on what is assumed", () => {
    const house = { kind: "load summary", load: LOAD, changed: { householdPintsPerDay: 12 } } as const;
    const { members, uncertain, assumptions } = houseMembers(house, COASTAL, 9, 1);
    expect(uncertain.map((one) => one.name)).toEqual([
      "airChangesAt50Pa",
      "moistureCapacitanceMultiple",
      "yearWarmerByF",
      "yearDewPointHigherByF",
    ]);
    expect(assumptions.find((one) => one.name === "householdPintsPerDay")?.value).toBe(12);
    for (const { values } of members) {
      for (const [place, one] of uncertain.entries()) {
        expect(values[place]).toBeGreaterThanOrEqual(one.low);
        expect(values[place]).toBeLessThanOrEqual(one.high);
      }
    }
    expect(members[0]?.values).toEqual(uncertain.map((one) => one.value));
    // Measured leakage 1,500 · 60/17,000 = 5.294 air changes, a tenth either way.
    expect(uncertain[0]?.low).toBeCloseTo(0.9 * 5.294, 2);
    expect(uncertain[0]?.high).toBeCloseTo(1.1 * 5.294, 2);
    // Half the eight draws below the central value, half above.
    expect(members.slice(1).filter((one) => (one.values[0] ?? 0) < 5.294)).toHaveLength(4);
  });

  it("a member that contradicts the load summary says so and stands aside", () => {
    // 18,000 Btu/h over 40 °F is 450 Btu/(h·°F); 12 air changes at 50 Pa take nearly 200 of it, 7 leave room for sun.
    const load = { ...LOAD, leakageCfm50: null, sensibleCoolingBtuh: 17_500, heatingBtuh: 20_500 };
    const { members } = houseMembers({ kind: "load summary", load, changed: {} }, COASTAL, 20, 1);
    const refused = members.filter((one) => one.house === null);
    expect(members[0]?.house).not.toBeNull();
    for (const { problem } of refused) expect(problem).toMatch(/Btu\/h/);
  });
});

it("a shifted year: three degrees more dew point, saturated where it would pass the dry bulb", () => {
  const weather = steadyWeather(48, 80, 0.01109);
  weather.dewPointF.fill(60);
  weather.dewPointF[3] = 78;
  const shifted = shiftWeather(weather, { dryBulbByF: -1, dewPointByF: 3 });
  expect(shifted.dryBulbF[0]).toBe(79);
  // An ideal gas reads up to 0.5 % below the tables' real one near saturation.
  expect(Math.abs((shifted.humidityRatio[0] ?? 0) / 0.01236 - 1)).toBeLessThan(0.005);
  expect(shifted.dewPointF[3]).toBe(79);
  expect(shifted.relativeHumidityPct[3]).toBeCloseTo(100, 9);
  expect(shiftWeather(weather, { dryBulbByF: 0, dewPointByF: 0 })).toBe(weather);
});

it("typical hours: the hottest day, and the wettest of the mild weeks", () => {
  const weather = steadyWeather(24 * 30, 90, 0.01);
  weather.dryBulbF.fill(96, 24 * 4, 24 * 5);
  weather.dryBulbF.fill(68, 24 * 10, 24 * 24);
  weather.humidityRatio.fill(0.013, 24 * 15, 24 * 22);
  expect(typicalHours(weather)).toEqual({ hotDayFirstHour: 96, mildWetWeekFirstHour: 360 });
  expect(typicalHours(steadyWeather(24 * 10, 95, 0.01)).mildWetWeekFirstHour).toBeNull();
});

it("stable text: keys in order, typed arrays as lists, numbers unrounded", () => {
  expect(stableText({ b: 0.1 + 0.2, a: Float64Array.of(1, 2.5), c: [null, { z: 1, y: "x" }] })).toBe(
    '{"a":[1,2.5],"b":0.30000000000000004,"c":[null,{"y":"x","z":1}]}',
  );
});

describe("setpoints that contradict each other", () => {
  it("are refused in words, naming both", () => {
    const at = { ...controls, coolingSetpointF: 68, heatingSetpointF: 70 };
    const run = () => [
      ...forecastYears(
        prepareForecast({ ...INPUT, weather: tenDays(), options: [{ ...AS_SET, controls: at }], members: 1 }),
      ),
    ];
    expect(run).toThrow(/heating setpoint of 70 °F lies above the cooling setpoint of 68 °F.*Lower the one/);
  });
});

import { describe, expect, it } from "vitest";
import {
  type SearchInput,
  type SearchProgress,
  searchSettings,
  settingSensitivity,
  simulateYear,
} from "@/lib/engineering/simulation";
import { BASE, SETTINGS, SYSTEM, stageAt, steadyWeather } from "./fixtures";

const SOURCE = "every combination run by itself and sorted by hand (computed)";

function tenDays() {
  const weather = steadyWeather(240, 85, 0.0145);
  for (let hour = 0; hour < 240; hour++) {
    weather.dryBulbF[hour] = 78 + 12 * Math.sin((2 * Math.PI * (hour - 9)) / 24);
  }
  return weather;
}
const DRYER = {
  ratedPintsPerDay: 70,
  ratedDbF: 73,
  ratedRhPct: 60,
  powerW: 500,
  startAbovePct: 54,
  stopBelowPct: 50,
};
const fanOn = { ...BASE.controls, settings: { ...SETTINGS, fanBetweenCalls: "on" as const } };
const at = (cfm: number, pct: number) => ({ ...SYSTEM, stages: [stageAt(cfm, pct)] });

const INPUT: SearchInput = {
  house: BASE.house,
  weather: tenDays(),
  humidityLimitPct: 55,
  mostHoursAboveLimit: 100,
  mostAboveSetpointDegreeHours: 200,
  space: {
    capacity: [
      { name: "3 tons", effort: 0 },
      { name: "2 tons", effort: 1 },
    ],
    airflow: [
      { name: "1,200 cfm", effort: 0 },
      { name: "700 cfm", effort: 1 },
    ],
    systems: [
      [at(1_200, 100), at(700, 100)],
      [null, at(700, 67)],
    ],
    controls: [
      { name: "fan on", effort: 0, value: fanOn },
      { name: "fan off", effort: 1, value: BASE.controls },
    ],
    ventilation: [{ name: "continuous", effort: 0, value: BASE.ventilation }],
    dehumidifier: [
      { name: "none", effort: 0, value: null },
      { name: "70 pints", effort: 20, value: DRYER },
    ],
  },
};

/** All twelve possible combinations by their own years. */
const ALL = [0, 1].flatMap((capacity) =>
  [0, 1].flatMap((airflow) =>
    [0, 1].flatMap((controls) =>
      [0, 1].flatMap((dehumidifier) => {
        const system = INPUT.space.systems[capacity]?.[airflow];
        if (!system) return [];
        const year = simulateYear({
          ...BASE,
          weather: INPUT.weather,
          humidityLimitPct: 55,
          system,
          controls: controls === 0 ? fanOn : BASE.controls,
          dehumidifier: dehumidifier === 0 ? null : DRYER,
        });
        const effort = capacity + airflow + controls + 20 * dehumidifier;
        return [{ capacity, airflow, controls, dehumidifier, effort, year }];
      }),
    ),
  ),
);

describe(`search: ${SOURCE}`, () => {
  const last = (input: SearchInput, keep: number): SearchProgress | undefined =>
    [...searchSettings(input, keep)].at(-1);

  it("the hours of these ten days set combinations apart", () => {
    expect(ALL).toHaveLength(12);
    const hours = ALL.map((one) => one.year.hoursAboveLimit);
    expect(Math.max(...hours)).toBeGreaterThan(Math.min(...hours) + 50);
  });

  it.each([0, 5, 40, 120])(
    "with %d hours allowed it finds the least effort that keeps the promise",
    (most) => {
      const keeps = ALL.filter(
        ({ year }) => year.hoursAboveLimit <= most && year.aboveSetpointDegreeHours <= 200,
      );
      const said = last({ ...INPUT, mostHoursAboveLimit: most }, 2);
      expect(said?.best.map((one) => one.effort)).toEqual(
        keeps
          .map((one) => one.effort)
          .sort((a, b) => a - b)
          .slice(0, 2),
      );
      for (const one of said?.best ?? []) expect(one.hoursAboveLimit).toBeLessThanOrEqual(most);
    },
  );

  it("ends as soon as more effort cannot matter, and tries all when nothing keeps the promise", () => {
    const easy = [
      ...searchSettings({ ...INPUT, mostHoursAboveLimit: 8_784, mostAboveSetpointDegreeHours: 1e5 }, 1),
    ];
    expect(easy).toHaveLength(1);
    const never = last({ ...INPUT, mostHoursAboveLimit: 0, mostAboveSetpointDegreeHours: 0 }, 3);
    expect(never?.tried).toBe(12);
    expect(never?.best).toEqual([]);
    expect(never?.closest).toHaveLength(3);
  });

  it("says which setting matters most, each turned by itself", () => {
    const place = { capacity: 0, airflow: 0, controls: 0, ventilation: 0, dehumidifier: 0 };
    const said = [...settingSensitivity(INPUT, place)].at(-1) ?? [];
    const hoursOf = (controls: number, airflow: number, dehumidifier: number) =>
      ALL.find(
        (one) =>
          one.capacity === 0 &&
          one.airflow === airflow &&
          one.controls === controls &&
          one.dehumidifier === dehumidifier,
      )?.year.hoursAboveLimit ?? Number.NaN;
    const spread = (axis: string) => said.find((one) => one.axis === axis)?.spreadHours;
    expect(spread("controls")).toBeCloseTo(Math.abs(hoursOf(1, 0, 0) - hoursOf(0, 0, 0)), 9);
    expect(spread("airflow")).toBeCloseTo(Math.abs(hoursOf(0, 1, 0) - hoursOf(0, 0, 0)), 9);
    expect(spread("dehumidifier")).toBeCloseTo(Math.abs(hoursOf(0, 0, 1) - hoursOf(0, 0, 0)), 9);
    // Two tons do not go with 1,200 cfm, so capacity has nothing to turn to here.
    expect(spread("capacity")).toBe(0);
    const spreads = said.map((one) => one.spreadHours);
    expect(spreads).toEqual([...spreads].sort((a, b) => b - a));
  });

  it("refuses spaces without a choice or without a system", () => {
    const space = {
      ...INPUT.space,
      systems: [
        [null, null],
        [null, null],
      ],
    };
    expect(() => [...searchSettings({ ...INPUT, space }, 1)]).toThrow(/No capacity goes with any airflow/);
    expect(() => [...searchSettings({ ...INPUT, space: { ...INPUT.space, controls: [] } }, 1)]).toThrow(
      /space.controls/,
    );
    expect(() => [...searchSettings(INPUT, 0)]).toThrow(/keep/);
  });
});

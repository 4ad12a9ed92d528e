import fc from "fast-check";
import { expect } from "vitest";
import * as simulation from "@/lib/engineering/simulation";
import { everyFunctionTried, lawful, randomTest, runs, tried } from "../../support/random-inputs";
import { BASE, HOUSE, SETTINGS, SYSTEM, stageAt, steadyWeather } from "./fixtures";

const {
  compareOptions,
  coolingTableAt,
  crossCheckFindings,
  designDayPeaks,
  fitHouseToLog,
  fittedHouse,
  forecastYears,
  gatherForecast,
  houseFromLoadSummary,
  houseMembers,
  houseWithFactors,
  memberYear,
  prepareForecast,
  searchSettings,
  settingSensitivity,
  shiftWeather,
  simulateYear,
  stableText,
  storeysOf,
  typicalHours,
  yearPictures,
} = tried(simulation, ["fittedHouse", "prepareForecast", "shiftWeather"]);

const wild = fc.oneof(fc.constantFrom(Number.NaN, Number.POSITIVE_INFINITY, 0, -1, 1e300), fc.double());
const mostly = (min: number, max: number) =>
  fc.oneof({ weight: 60, arbitrary: fc.double({ min, max, noNaN: true }) }, { weight: 1, arbitrary: wild });

const input = fc
  .record({
    outdoorF: mostly(20, 110),
    outdoorRatio: mostly(0.001, 0.012),
    conductance: mostly(50, 1_500),
    leakage: mostly(0, 300),
    coupling: mostly(0, 10_000),
    multiple: mostly(1, 30),
    water: mostly(0, 3),
    airflow: mostly(400, 2_000),
    holds: mostly(0.1, 5),
    settling: mostly(0, 30),
    offset: mostly(0.1, 3),
    runOn: mostly(0, 300),
    fan: fc.constantFrom("off" as const, "on" as const),
    two: fc.boolean(),
  })
  .map(
    (one): simulation.YearInput => ({
      ...BASE,
      weather: steadyWeather(24, one.outdoorF, one.outdoorRatio),
      house: {
        ...HOUSE,
        conductanceBtuhPerF: one.conductance,
        leakageAreaIn2: one.leakage,
        massCouplingBtuhPerF: one.coupling,
        moistureCapacitanceMultiple: one.multiple,
        moistureLbPerHByHour: HOUSE.moistureLbPerHByHour.map(() => one.water),
      },
      system: {
        ...SYSTEM,
        coilHoldsLb: one.holds,
        settlingMin: one.settling,
        stages: one.two
          ? [stageAt(one.airflow / 2, 60), stageAt(one.airflow, 100)]
          : [stageAt(one.airflow, 100)],
      },
      controls: {
        ...BASE.controls,
        settings: {
          ...SETTINGS,
          firstStageStartOffsetF: one.offset,
          secondStageStartOffsetF: one.offset + 1,
          fanRunOnAfterCoolingS: one.runOn,
          fanBetweenCalls: one.fan,
        },
      },
    }),
  );

randomTest("any day closes its balances or is refused", () => {
  let answered = 0;
  fc.assert(
    fc.property(input, (given) => {
      const found = lawful(() => simulateYear(given));
      if (found === null) return;
      answered++;
      expect(Math.abs(found.heat.relative)).toBeLessThan(1e-6);
      expect(Math.abs(found.water.relative)).toBeLessThan(1e-6);
      expect(found.dryHours + found.hoursAboveLimit).toBeCloseTo(24, 6);
    }),
    runs(81, 1 / 20),
  );
  expect(answered).toBeGreaterThan(0);
  fc.assert(
    fc.property(input, fc.array(fc.constantFrom("a", "b", "c"), { maxLength: 3 }), (given, names) => {
      lawful(() =>
        compareOptions(
          given,
          names.map((name) => ({ name })),
        ),
      );
    }),
    runs(82, 1 / 20),
  );
});

randomTest("any height has storeys, or is refused", () => {
  fc.assert(
    fc.property(mostly(0, 70), (heightFt) => {
      lawful(() => storeysOf(heightFt));
    }),
    runs(79),
  );
});

randomTest("any maker's table gives a grid, or is refused", () => {
  const line = fc.record({
    outdoorDbF: fc.oneof(fc.constantFrom(75, 95, 115), wild),
    enteringWbF: fc.constantFrom(59, 63, 67, 85),
    enteringDbF: fc.constantFrom(75, 80),
    airflowCfm: fc.constantFrom(800, 1_200),
    totalBtuh: mostly(18_000, 40_000),
    sensibleBtuh: mostly(10_000, 20_000),
    powerW: fc.constant(null),
  });
  fc.assert(
    fc.property(fc.array(line, { maxLength: 6 }), mostly(700, 1_300), (lines, airflowCfm) => {
      lawful(() => coolingTableAt(lines, airflowCfm));
    }),
    runs(80),
  );
});

randomTest("any load gives a house that can be run, or is refused", () => {
  const day = steadyWeather(24, 95, 0.012);
  day.directNormalBtuhPerFt2.fill(150, 8, 18);
  day.globalHorizontalBtuhPerFt2.fill(120, 8, 18);
  const load = fc.record({
    heatingBtuh: mostly(5_000, 90_000),
    sensibleCoolingBtuh: mostly(5_000, 90_000),
    indoorHeatingDbF: fc.constant(70),
    outdoorHeatingDbF: mostly(-10, 60),
    indoorCoolingDbF: fc.constant(75),
    outdoorCoolingDbF: mostly(85, 100),
    floorAreaFt2: mostly(500, 5_000),
    bedrooms: mostly(0, 6),
    leakageCfm50: fc.option(mostly(100, 5_000)),
    ventilationCfm: mostly(0, 200),
    storeys: fc.constantFrom(1 as const, 2 as const, 3 as const),
    shelterClass: fc.constantFrom(1 as const, 3 as const, 5 as const),
  });
  fc.assert(
    fc.property(load, (given) => {
      const found = lawful(() => houseFromLoadSummary(given, day));
      if (found === null) return;
      expect(found.house.conductanceBtuhPerF).toBeGreaterThan(0);
    }),
    runs(83, 1 / 10),
  );
  const dayOf = fc.record({
    load,
    elevationFt: mostly(0, 8_000),
    indoorCoolingRhPct: mostly(30, 70),
    outdoorCoolingWbF: mostly(60, 85),
    latentCoolingBtuh: mostly(0, 20_000),
    houseHeightFt: fc.option(mostly(6, 30), { freq: 20 }),
  });
  fc.assert(
    fc.property(dayOf, ({ load: loads, latentCoolingBtuh, houseHeightFt, ...air }) => {
      const peaks = lawful(() => designDayPeaks({ ...loads, ...air }));
      if (peaks !== null) expect(peaks.latentBtuh).toBeGreaterThanOrEqual(0);
      const said = lawful(() => crossCheckFindings({ ...loads, ...air, latentCoolingBtuh, houseHeightFt }));
      if (said === null) return;
      expect(said).toHaveLength(1);
      expect([null, "not measured"]).toContain(said[0]?.verdict);
    }),
    runs(86, 1 / 10),
  );
});

randomTest("a forecast of any day: ranges around the central house, or a refusal", () => {
  let answered = 0;
  const asked = fc.record({
    given: input,
    names: fc.array(fc.constantFrom("a", "b", "c"), { minLength: 1, maxLength: 2 }),
    members: fc.oneof(
      { weight: 9, arbitrary: fc.integer({ min: 1, max: 3 }) },
      { weight: 1, arbitrary: wild },
    ),
    seed: fc.oneof({ weight: 9, arbitrary: fc.nat() }, { weight: 1, arbitrary: wild }),
  });
  fc.assert(
    fc.property(asked, ({ given, names, members, seed }) => {
      const { house, weather, system, controls, ventilation, dehumidifier, humidityLimitPct } = given;
      const options = names.map((name) => ({ name, system, controls, ventilation, dehumidifier }));
      lawful(() => houseMembers({ kind: "given", house }, weather, members, seed));
      const place = { option: 0, hours: typicalHours(weather) };
      const prepared = lawful(() =>
        prepareForecast({
          house: { kind: "given", house },
          weather,
          options,
          humidityLimitPct,
          members,
          seed,
        }),
      );
      if (prepared === null) return;
      const central = prepared.ensemble.members[0];
      const option = options[0];
      if (central === undefined || option === undefined) return;
      const year = lawful(() => simulateYear({ ...given, trace: { firstHour: 0, hours: 24 } }));
      if (year === null) return;
      expect(yearPictures(year, weather, place.hours).hotDay.roomF).toHaveLength(24);
      expect(memberYear(option, place, central, weather, humidityLimitPct).figures?.starts).toBe(year.starts);
      const years = lawful(() => [...forecastYears(prepared)]);
      if (years === null) return;
      answered++;
      const {
        low,
        central: middle,
        high,
      } = gatherForecast(prepared, years).options[0]?.ranges.dryHours ?? {
        low: 1,
        central: 0,
        high: 0,
      };
      expect(low).toBeLessThanOrEqual(middle);
      expect(middle).toBeLessThanOrEqual(high);
      expect(stableText(years)).not.toMatch(/undefined/);
    }),
    runs(84, 1 / 12, 2),
  );
  expect(answered).toBeGreaterThan(0);
});

randomTest("any shift of a day is a day, or refused", () => {
  fc.assert(
    fc.property(
      mostly(20, 110),
      mostly(0.001, 0.012),
      mostly(-10, 10),
      mostly(-10, 10),
      (f, w, warmer, wetter) => {
        const found = lawful(() =>
          shiftWeather(steadyWeather(24, f, w), { dryBulbByF: warmer, dewPointByF: wetter }),
        );
        if (found === null || (warmer === 0 && wetter === 0)) return;
        expect(found.relativeHumidityPct[0]).toBeLessThanOrEqual(100 + 1e-9);
      },
    ),
    runs(85, 1 / 10),
  );
});

randomTest("a search of any day: what it finds keeps the promise, or a refusal", () => {
  const asked = fc.record({
    given: input,
    most: mostly(0, 24),
    effort: mostly(0, 10),
    keep: fc.oneof({ weight: 9, arbitrary: fc.integer({ min: 1, max: 3 }) }, { weight: 1, arbitrary: wild }),
  });
  fc.assert(
    fc.property(asked, ({ given, most, effort, keep }) => {
      const search: simulation.SearchInput = {
        house: given.house,
        weather: given.weather,
        humidityLimitPct: given.humidityLimitPct,
        mostHoursAboveLimit: most,
        mostAboveSetpointDegreeHours: 100,
        space: {
          capacity: [{ name: "one", effort: 0 }],
          airflow: [{ name: "as drawn", effort: 0 }],
          systems: [[given.system]],
          controls: [{ name: "as drawn", effort: 0, value: given.controls }],
          ventilation: [
            { name: "as drawn", effort: 0, value: given.ventilation },
            { name: "none", effort, value: { kind: "none" } },
          ],
          dehumidifier: [{ name: "none", effort: 0, value: null }],
        },
      };
      for (const { best } of lawful(() => [...searchSettings(search, keep)]) ?? []) {
        for (const one of best) expect(one.hoursAboveLimit).toBeLessThanOrEqual(most);
      }
      const place = { capacity: 0, airflow: 0, controls: 0, ventilation: 0, dehumidifier: 0 };
      const found = lawful(() => [...settingSensitivity(search, place)]) ?? [];
      for (const { spreadHours } of found.at(-1) ?? []) expect(spreadHours).toBeGreaterThanOrEqual(0);
    }),
    runs(87, 1 / 20),
  );
});

randomTest("a fit to any log is a house within its bounds, or a refusal", () => {
  const asked = fc.record({
    house: input.map((given) => given.house),
    length: fc.constantFrom(0, 50, 120),
    intervalMin: mostly(30, 60),
    numbers: fc.array(mostly(0, 1), { minLength: 9, maxLength: 9 }),
  });
  fc.assert(
    fc.property(asked, ({ house, length, intervalMin, numbers }) => {
      const column = (place: number, low: number, span: number) =>
        Float64Array.from(
          { length },
          (_, at) => low + span * (numbers[place] ?? 0) * (1 + Math.sin(at / (3 + place))),
        );
      const found = lawful(() =>
        fitHouseToLog(house, {
          intervalMin,
          pressurePsia: 14.696,
          startsAnew: Uint8Array.from({ length }, (_, at) => (at === 0 ? 1 : 0)),
          day: Int32Array.from({ length }, (_, at) => Math.floor((at * intervalMin) / 1_440)),
          clockHour: Uint8Array.from({ length }, (_, at) => at % 24),
          indoorF: column(0, 70, 5),
          indoorRatio: column(1, 0.006, 0.003),
          outdoorF: column(2, 60, 20),
          outdoorRatio: column(3, 0.005, 0.006),
          windMph: column(4, 0, 10),
          sunBtuh: column(5, 0, 8_000),
          cooledBtuh: column(6, 0, 15_000),
          driedLbPerH: column(7, 0, 3),
          ventilationCfm: column(8, 0, 60),
        }),
      );
      if (found === null) return;
      expect(found.house.leakageAreaIn2).toBeGreaterThanOrEqual(0);
      expect(found.fitted.temperatureF).toBeGreaterThanOrEqual(0);
    }),
    runs(88, 1 / 19),
  );
  fc.assert(
    fc.property(mostly(0.3, 3), (value) => {
      const given = { name: "leakage", value, low: value, high: value, unit: "ratio", why: "drawn" };
      const found = lawful(() => fittedHouse(HOUSE, [given]));
      if (found?.kind !== "fitted") return;
      const scaled = lawful(() => found.houseAt({ leakage: value }));
      if (scaled !== null) expect(scaled.leakageAreaIn2).toBeCloseTo(HOUSE.leakageAreaIn2 * value, 6);
    }),
    runs(90, 1 / 10),
  );
  fc.assert(
    fc.property(input, fc.array(mostly(0.3, 3), { minLength: 5, maxLength: 5 }), (given, [a, b, c, d, e]) => {
      lawful(() =>
        houseWithFactors(given.house, {
          conductance: a ?? 1,
          leakage: b ?? 1,
          gains: c ?? 1,
          moisture: d ?? 1,
          buffer: e ?? 1,
        }),
      );
    }),
    runs(89, 1 / 10),
  );
});

everyFunctionTried("simulation", simulation);

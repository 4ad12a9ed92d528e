import {
  type ForecastOption,
  forecastYears,
  gatherForecast,
  type MemberYear,
  prepareForecast,
} from "@/lib/engineering/simulation";
import { emptyTotals, firstState } from "@/lib/engineering/simulation/simulate-year";
import { runHours } from "@/lib/engineering/simulation/year-loop";
import { SUM } from "@/lib/engineering/simulation/year-numbers";
import { yearPlan } from "@/lib/engineering/simulation/year-plan";
import { BASE, HOUSE, SYSTEM, stageAt } from "../engineering/simulation/fixtures";
import { yearInCpp } from "./year-in-cpp";

/*
 * The year's loop beside the same loop in C++, and a forecast of six options with ten members each.
 */
const TURNS = 15;
const mark = (met: boolean) => (met ? "met" : "NOT met");

/** The two-stage system: every part of the loop is in use. */
const INPUT = {
  ...BASE,
  system: { ...SYSTEM, stages: [stageAt(700, 60), stageAt(1_000, 100)] },
  controls: { ...BASE.controls, settings: { ...BASE.controls.settings, fanRunOnAfterCoolingS: 60 } },
};

/** Lines for the bench's report. */
export function forecastLines(): readonly string[] {
  return [loopLine(), ...forecastOfTen()];
}

function loopLine(): string {
  const plan = yearPlan(INPUT);
  const took: number[] = [];
  let totals = emptyTotals(plan, null);
  for (let turn = 0; turn < TURNS; turn++) {
    totals = emptyTotals(plan, null);
    const runIn = emptyTotals(plan, null);
    const state = firstState(plan);
    const start = performance.now();
    runHours(plan, state, 0, 336, runIn);
    runHours(plan, state, 0, plan.hours, totals);
    took.push(performance.now() - start);
  }
  const ms = took.sort((a, b) => a - b)[Math.floor(TURNS / 2)] ?? Number.NaN;
  const name = "minute loop of a two-stage year with its two weeks before";
  const cpp = yearInCpp(plan, TURNS);
  if (cpp === null) return `${name}: ${ms.toFixed(0)} ms; no g++ here, so nothing to compare with`;
  const sum = (place: number) => totals.sums[place] ?? Number.NaN;
  const wetHours = totals.hourWetMinutes.reduce((hours, minutes) => hours + minutes / 60, 0);
  // Other rounding of exp and sums may turn single minutes; more would be another year.
  const pairs = [
    [wetHours, cpp.wetHours],
    [sum(SUM.drainedLb), cpp.drainedLb],
    [sum(SUM.coilSensibleBtu), cpp.coilSensibleBtu],
    [sum(SUM.starts), cpp.starts],
  ] as const;
  const apart = Math.max(...pairs.map(([here, there]) => Math.abs(here / there - 1)));
  if (!(apart < 1e-3)) throw new Error(`The C++ year is another one: ${JSON.stringify(pairs)}`);
  return `${name}: ${ms.toFixed(0)} ms, in C++ (-O2) ${cpp.ms.toFixed(0)} ms; aim ≤ 3 × ${mark(ms <= 3 * cpp.ms)} (${(ms / cpp.ms).toFixed(2)} ×, sums within ${apart.toExponential(0)})`;
}

function forecastOfTen(): readonly string[] {
  const { ventilation, controls, dehumidifier } = BASE;
  const options: readonly ForecastOption[] = [700, 800, 900, 1_000, 1_100, 1_200].map((cfm) => ({
    name: `${cfm} cfm`,
    system: { ...SYSTEM, stages: [stageAt(cfm, 100)] },
    controls,
    ventilation,
    dehumidifier,
  }));
  const start = performance.now();
  const prepared = prepareForecast({
    house: { kind: "given", house: HOUSE },
    weather: BASE.weather,
    options,
    humidityLimitPct: 60,
    members: 10,
    seed: 1,
  });
  const years: MemberYear[] = [];
  let first = Number.NaN;
  for (const year of forecastYears(prepared)) {
    years.push(year);
    gatherForecast(prepared, years);
    if (years.length === 1) first = performance.now() - start;
  }
  const all = performance.now() - start;
  return [
    `forecast, six options × ten members, on one core: ${(all / 1_000).toFixed(1)} s; aim ≤ 6 s on two cores ${mark(all <= 6_000)}; first numbers after ${first.toFixed(0)} ms, aim < 500 ms ${mark(first < 500)}`,
  ];
}

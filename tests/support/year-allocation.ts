import { getHeapStatistics } from "node:v8";
import type { YearInput } from "@/lib/engineering/simulation";
import { emptyTotals, firstState } from "@/lib/engineering/simulation/simulate-year";
import { runHours } from "@/lib/engineering/simulation/year-loop";
import { yearPlan } from "@/lib/engineering/simulation/year-plan";
import { BASE, SYSTEM, stageAt } from "../engineering/simulation/fixtures";

/*
 * A process of its own, begun with --expose-gc and a young space in which a year's garbage has room: prints for each way to run a year how
 * many bytes the heap grows in one year and in two. Turns are repeated until the compiler has settled; what is printed is the least of them.
 */

const DRYER = {
  ratedPintsPerDay: 70,
  ratedDbF: 73,
  ratedRhPct: 60,
  powerW: 500,
  startAbovePct: 57,
  stopBelowPct: 53,
};
const { settings } = BASE.controls;
const { a0LbPerH: _a0, approach: _approach, frostLimitF: _frost, ceiling: _ceiling, ...ofAny } = SYSTEM;
const TABLE = {
  outdoorDbF: [65, 95, 115],
  enteringWbF: [59, 67],
  enteringDbF: [75, 80],
  totalBtuh: [36_000, 36_500, 39_000, 39_500, 32_000, 32_500, 35_500, 36_000, 29_000, 29_500, 32_000, 32_500],
  sensibleBtuh: [
    28_000, 31_000, 23_000, 27_000, 27_000, 30_000, 22_000, 26_000, 26_000, 29_000, 21_000, 25_000,
  ],
};
const WAYS: Readonly<Record<string, YearInput>> = {
  "one stage": BASE,
  "two stages with lag, run-on and dehumidifier": {
    ...BASE,
    system: { ...SYSTEM, stages: [stageAt(700, 60), stageAt(1_000, 100)] },
    controls: {
      ...BASE.controls,
      settings: { ...settings, fanRunOnAfterCoolingS: 60, stepBackToFirstStage: true },
    },
    dehumidifier: DRYER,
  },
  "a maker's table, fan between calls": {
    ...BASE,
    system: { ...ofAny, settlingMin: 0, stages: [{ airflowCfm: 1_000, fanW: 400, table: TABLE }] },
    controls: {
      ...BASE.controls,
      settings: { ...settings, fanBetweenCalls: "minutes per hour", fanBetweenCallsMinPerH: 15 },
    },
  },
};
/** One number a minute put into an object of its own would be 8 million bytes. */
const SETTLED = 300_000;
const MOST_TURNS = 40;

const found = Object.entries(WAYS).map(([way, input]) => {
  const plan = yearPlan(input);
  const grown = (years: number): number => {
    const totals = emptyTotals(plan, null);
    const state = firstState(plan);
    globalThis.gc?.();
    const before = getHeapStatistics().used_heap_size;
    for (let year = 0; year < years; year++) runHours(plan, state, 0, plan.hours, totals);
    return getHeapStatistics().used_heap_size - before;
  };
  const least = (years: number): number => {
    let bytes = Number.POSITIVE_INFINITY;
    for (let turn = 0; turn < MOST_TURNS && bytes > SETTLED; turn++) bytes = Math.min(bytes, grown(years));
    return bytes;
  };
  return { way, oneYear: least(1), twoYears: least(2) };
});
process.stdout.write(JSON.stringify(found));

import { getHeapStatistics } from "node:v8";
import { expect, it } from "vitest";
import { emptyTotals, firstState } from "@/lib/engineering/simulation/simulate-year";
import { runHours } from "@/lib/engineering/simulation/year-loop";
import { yearPlan } from "@/lib/engineering/simulation/year-plan";
import { BASE, SYSTEM, stageAt } from "./fixtures";

const SOURCE =
  "a number put on the heap takes 12 bytes or more: one a minute would be 6 MB a year (computed)";
/** A sixtieth of one number a minute. What one reading of the heap and the test itself take is a few kB. */
const MOST_BYTES = 100_000;

it(`the minute loop allocates nothing: ${SOURCE}`, () => {
  const plan = yearPlan({ ...BASE, system: { ...SYSTEM, stages: [stageAt(700, 60), stageAt(1_000, 100)] } });
  const state = firstState(plan);
  const totals = emptyTotals(plan, null);
  const grownBy = (): number => {
    const before = getHeapStatistics().used_heap_size;
    runHours(plan, state, 0, plan.hours, totals);
    return getHeapStatistics().used_heap_size - before;
  };
  // Until it is compiled, the interpreter puts every number on the heap.
  const grown = Array.from({ length: 12 }, grownBy);
  // A collection in between would make it negative and hide what was allocated.
  const last = grown.slice(-6).filter((bytes) => bytes >= 0);
  expect(last.length).toBeGreaterThan(2);
  expect(Math.max(...last)).toBeLessThan(MOST_BYTES);
});

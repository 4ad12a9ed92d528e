import psychrolib from "psychrolib";
import { Bench } from "tinybench";
import { evaluateJob } from "@/lib/domain/evaluate";
import { moistAir } from "@/lib/engineering/air";
import { saturationTempF } from "@/lib/engineering/refrigerant";
import { saturationTable } from "@/lib/engineering/refrigerant/saturation-table";
import { simulateYear } from "@/lib/engineering/simulation";
import { BASE } from "../engineering/simulation/fixtures";
import { FULL_JOB } from "../support/full-job";
import { forecastLines } from "./forecast";
import { workersLine } from "./forecast-workers";
import { packetLines } from "./packets";
import { yearLogLines } from "./year-log";

/*
 * `npm run bench`: its aims, each beside a yardstick in the same run, so that a slow machine shows in both. Prints; decides nothing.
 */
const PRESSURE_PSIA = 14.696;
const CALLS = 1_000;
/** Wet bulbs from 55 to 75 °F at 80 °F: different each time, so that nothing is remembered. */
const wetBulbs = Float64Array.from({ length: CALLS }, (_, index) => 55 + (20 * index) / CALLS);
/** Pressures inside R-410A's table, psia. */
const pressures = Float64Array.from({ length: CALLS }, (_, index) => 60 + (400 * index) / CALLS);
const dewPsia = Float64Array.from(saturationTable["R-410A"].dew);

/** Rows an even step apart; the plainest lookup there is: walk to the row, straight line between two. */
const FIRST_ROW_F = -40;
const ROW_STEP_F = 190 / (dewPsia.length - 1);
function linearLookupF(pressurePsia: number): number {
  let row = 1;
  while (row < dewPsia.length - 1 && (dewPsia[row] ?? 0) < pressurePsia) row += 1;
  const low = dewPsia[row - 1] ?? 0;
  const high = dewPsia[row] ?? 0;
  return FIRST_ROW_F + ROW_STEP_F * (row - 1 + (pressurePsia - low) / (high - low));
}

let kept = 0;
const JOB = "findings of a whole job";
const PSYCHROLIB = "psychrolib called bare";
const AIR = "moist air from wet bulb";
const LOOKUP = "refrigerant lookup";
const LINEAR = "plain linear lookup";
const YEAR = "a year of a house, 525,600 minutes";

psychrolib.SetUnitSystem(psychrolib.IP);
const bench = new Bench({ time: 1_500, warmupTime: 500 });
bench
  .add(JOB, () => {
    kept += evaluateJob(FULL_JOB).ledger.length;
  })
  .add(PSYCHROLIB, () => {
    for (const wetBulbF of wetBulbs)
      kept += psychrolib.CalcPsychrometricsFromTWetBulb(80, wetBulbF, PRESSURE_PSIA)[0] ?? 0;
  })
  .add(AIR, () => {
    for (const wetBulbF of wetBulbs)
      kept += moistAir({ dryBulbF: 80, wetBulbF, pressurePsia: PRESSURE_PSIA }).enthalpyBtuPerLb;
  })
  .add(LOOKUP, () => {
    for (const pressurePsia of pressures) kept += saturationTempF("R-410A", pressurePsia, "dew");
  })
  .add(LINEAR, () => {
    for (const pressurePsia of pressures) kept += linearLookupF(pressurePsia);
  })
  .add(YEAR, () => {
    kept += simulateYear(BASE).dryHours;
  });
await bench.run();

/** Median, ms a turn. */
function turnMs(name: string): number {
  const result = bench.getTask(name)?.result;
  if (!result || !("latency" in result)) throw new Error(`${name} did not finish.`);
  return result.latency.p50;
}
const perSecond = (name: string) => (1_000 * CALLS) / turnMs(name);
const mark = (met: boolean) => (met ? "met" : "NOT met");
const rate = (value: number) => Math.round(value).toLocaleString("en-US");

const jobMs = turnMs(JOB);
const lines = [
  `${JOB}: ${jobMs.toFixed(2)} ms; aim ≤ 5 ms ${mark(jobMs <= 5)}; ${(jobMs / turnMs(PSYCHROLIB)).toFixed(1)} × ${CALLS} states of ${PSYCHROLIB}`,
  `${AIR}: ${rate(perSecond(AIR))}/s; aim ≥ 300,000/s ${mark(perSecond(AIR) >= 300_000)}; ${(perSecond(AIR) / perSecond(PSYCHROLIB)).toFixed(2)} × ${PSYCHROLIB} (${rate(perSecond(PSYCHROLIB))}/s)`,
  `${LOOKUP}: ${rate(perSecond(LOOKUP))}/s; aim ≥ 5,000,000/s ${mark(perSecond(LOOKUP) >= 5_000_000)}; ${(perSecond(LOOKUP) / perSecond(LINEAR)).toFixed(2)} × ${LINEAR} (${rate(perSecond(LINEAR))}/s)`,
  `${YEAR}: ${turnMs(YEAR).toFixed(0)} ms; aim ≤ 150 ms ${mark(turnMs(YEAR) <= 150)}; ${(turnMs(YEAR) / turnMs(PSYCHROLIB)).toFixed(0)} × ${CALLS} states of ${PSYCHROLIB}`,
  ...forecastLines(),
  await workersLine(),
  ...(await packetLines(mark)),
  ...(await yearLogLines(mark)),
];
process.stdout.write(`${lines.join("\n")}\n`);
// Read once, so that no work could be left out as useless.
if (!Number.isFinite(kept)) throw new Error("A result was not a number.");

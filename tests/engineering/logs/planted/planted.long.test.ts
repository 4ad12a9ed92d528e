import { describe, expect, it } from "vitest";
import { seedLimits } from "@/lib/engineering/limit-definition";
import { analyzeLog, likelyCauses, logsLimits } from "@/lib/engineering/logs";
import { type Fault, plantedHouse } from "./planted-house";

const SOURCE =
  "each log is made with one fault by a house of its own (common practice, no source): the fault is the right answer";
const SEEDS = 10;
/** Thresholds were looked at with the seeds 1 to 3: the test asks others. */
const FIRST_SEED = 101;
const HEALTHY = 100;
const FAULTS: readonly Exclude<Fault, "none">[] = [
  "short-cycles",
  "fan-between-calls",
  "second-stage-eager",
  "mild-wet-weather",
  "outdoor-moisture",
  "setpoint-habits",
  "airflow-too-high",
  "lost-capacity",
  "sensor-error",
];

function causesOf(fault: Fault, seed: number): readonly string[] {
  const { samples, context } = plantedHouse(fault, seed);
  return likelyCauses(analyzeLog(samples, context), seedLimits(logsLimits)).map(({ id }) => id);
}

describe(`planted causes: ${SOURCE}`, () => {
  it.each(FAULTS)("%s is the first cause in at least 9 of 10", { timeout: 60_000 }, (fault) => {
    const first = Array.from({ length: SEEDS }, (_, seed) => causesOf(fault, FIRST_SEED + seed)[0] ?? "none");
    expect(first.filter((id) => id === fault).length, first.join()).toBeGreaterThanOrEqual(9);
  });

  it("a healthy house yields no cause in at least 95 of 100", { timeout: 120_000 }, () => {
    const said = Array.from({ length: HEALTHY }, (_, seed) => causesOf("none", FIRST_SEED + seed));
    expect(said.filter((causes) => causes.length === 0).length).toBeGreaterThanOrEqual(95);
  });
});

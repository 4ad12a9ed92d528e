import { type Finding, notMeasured } from "../findings";
import { textBeside } from "../limit-text";
import type { LogAnalysis } from "./analyze-log";
import { figure, judged, type LogLimits } from "./judged";
import { logsRules } from "./rules";
import { shareShorterThan } from "./running";

/** Runs, cycles, rests, stages and the fan. */
export function runningFindings({ running }: LogAnalysis, limits: LogLimits): readonly Finding[] {
  const rules = [
    logsRules.shortRuns,
    logsRules.cycles,
    logsRules.minimumRest,
    logsRules.secondStage,
    logsRules.fanOnly,
  ];
  if (running === null) {
    return rules.map((rule) =>
      notMeasured(rule, ["firstStageShare"], "Import a log with the running time of the cooling stages."),
    );
  }
  const short = limits["logs.shortRunMin"];
  const shortShare = shareShorterThan(running.runLengths, short);
  const shortPct = shortShare === null ? null : shortShare * 100;
  const mostShort = limits["logs.shortRunShareMaxPct"];
  const mostCycles = limits["logs.cyclesPerHourMax"];
  const leastRest = limits["logs.minimumRestMin"];
  const mostSecond = limits["logs.secondStageShareMaxPct"];
  const mostFan = limits["logs.fanOnlyShareMaxPct"];
  const idleHours = running.hours - running.coolingHours;
  const fanPct =
    running.fanOnlyHours === null || idleHours <= 0 ? null : (100 * running.fanOnlyHours) / idleHours;
  return [
    running.runs === null || shortPct === null
      ? notMeasured(
          logsRules.shortRuns,
          ["firstStageShare"],
          "Import a log of hot days, with whole cooling runs in it.",
        )
      : judged(logsRules.shortRuns, {
          good: shortPct <= mostShort,
          enough: running.runs.count >= 20,
          statement: `${textBeside(shortPct, [mostShort], 0)} % of ${running.runs.count} cooling runs were shorter than ${short.toFixed(0)} min; ${mostShort.toFixed(0)} % is the limit, the median run is ${running.runs.medianMin.toFixed(0)} min.`,
          figures: [
            figure("short runs", shortPct, "%", 0),
            figure("median run", running.runs.medianMin, "min", 0),
          ],
          nextStep:
            "Compare the capacity as set with the measured load, then the first-stage start offset and minimum run.",
          inputs: ["firstStageShare"],
        }),
    running.cyclesPerHourAtHalf === null
      ? notMeasured(
          logsRules.cycles,
          ["firstStageShare"],
          "Import a log with at least 10 hours of about half running.",
        )
      : judged(logsRules.cycles, {
          good: running.cyclesPerHourAtHalf <= mostCycles,
          enough: true,
          statement: `At about half running the compressor starts ${textBeside(running.cyclesPerHourAtHalf, [mostCycles], 1)} times an hour; ${mostCycles.toFixed(1)} is the limit.`,
          figures: [figure("cycles at half running", running.cyclesPerHourAtHalf, "per h", 1)],
          nextStep: "Raise the first-stage start offset.",
          inputs: ["firstStageShare"],
        }),
    running.rests === null
      ? notMeasured(
          logsRules.minimumRest,
          ["firstStageShare"],
          "Import a log with at least two cooling runs.",
        )
      : judged(logsRules.minimumRest, {
          good: running.rests.shortestMin >= leastRest,
          enough: running.rests.count >= 20,
          statement: `The shortest of ${running.rests.count} rests was ${textBeside(running.rests.shortestMin, [leastRest], 1)} min; ${leastRest.toFixed(0)} min is the least.`,
          figures: [figure("shortest rest", running.rests.shortestMin, "min", 1)],
          nextStep: "Set the minimum compressor rest.",
          inputs: ["firstStageShare"],
        }),
    running.secondStageShare === null
      ? notMeasured(
          logsRules.secondStage,
          ["secondStageShare"],
          "For two-stage equipment import the second stage's time.",
        )
      : judged(logsRules.secondStage, {
          good: running.secondStageShare * 100 <= mostSecond,
          enough: running.coolingHours >= 20,
          statement: `The second stage ran ${textBeside(running.secondStageShare * 100, [mostSecond], 0)} % of the cooling time; ${mostSecond.toFixed(0)} % is the limit.`,
          figures: [figure("second-stage share", running.secondStageShare * 100, "%", 0)],
          nextStep: "Raise the second-stage start offset and turn step back on.",
          inputs: ["secondStageShare"],
        }),
    fanPct === null
      ? notMeasured(logsRules.fanOnly, ["fanShare"], "Import a log with the fan's running time.")
      : judged(logsRules.fanOnly, {
          good: fanPct <= mostFan,
          enough: idleHours >= 24,
          statement: `The fan ran ${textBeside(fanPct, [mostFan], 0)} % of the time without cooling; ${mostFan.toFixed(0)} % is the limit.`,
          figures: [figure("fan without cooling", running.fanOnlyHours ?? 0, "h", 0)],
          nextStep: "Turn the fan off between calls and set the run-on to 0 s.",
          inputs: ["fanShare"],
        }),
  ];
}

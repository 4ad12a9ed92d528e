import type { LogAnalysis } from "./analyze-log";
import { pct, sign, type Weighed } from "./cause-signs";
import type { LogLimits } from "./judged";
import { shareShorterThan } from "./running";

/** Indoor moisture falls by more than this through a long run of a drying coil, gr/lb an hour (common practice, no source). */
const LITTLE_DRYING = -4;

/** Signs that runs are too short to dry: oversized, or set too big. */
export function shortCycles({ running, loadLine }: LogAnalysis, limits: LogLimits): Weighed {
  const short = limits["logs.shortRunMin"];
  const ratio = loadLine?.atDesign?.oversizeRatio;
  return {
    id: "short-cycles",
    title: "Short cycles: too large, or set too large",
    signs: [
      sign(
        running === null ? null : shareShorterThan(running.runLengths, short),
        (share) => share * 100 > limits["logs.shortRunShareMaxPct"],
        (share) => `${pct(share)} of the runs are shorter than ${short.toFixed(0)} min`,
      ),
      sign(
        ratio,
        (value) => value > limits["logs.oversizeRatioMax"],
        (value) => `capacity is ${value.toFixed(2)} of the measured peak load`,
      ),
      sign(
        running?.cyclesPerHourAtHalf,
        (value) => value > limits["logs.cyclesPerHourMax"],
        (value) => `${value.toFixed(1)} cycles an hour at half running`,
      ),
    ],
    nextCheck: "Compare the capacity setting and first-stage start offset with the control setup.",
  };
}

/** Signs that the fan between calls gives water back to the air. */
export function fanBetweenCalls({ running }: LogAnalysis, limits: LogLimits): Weighed {
  const idle = running === null ? 0 : running.hours - running.coolingHours;
  const share =
    running?.fanOnlyHours === null || running === null || idle <= 0 ? null : running.fanOnlyHours / idle;
  return {
    id: "fan-between-calls",
    title: "The fan dries the coil back into the house",
    signs: [
      sign(
        share,
        (value) => value * 100 > limits["logs.fanOnlyShareMaxPct"],
        (value) => `the fan runs ${pct(value)} of the time without cooling`,
      ),
      sign(
        running?.afterRun.fanOn?.meanRiseGrainsPerLb,
        (value) => value > Math.max(1, running?.afterRun.fanOff?.meanRiseGrainsPerLb ?? 0),
        (value) =>
          `indoor moisture moves ${value.toFixed(1)} gr/lb in the quarter hour after a run with the fan on`,
        2,
      ),
    ],
    nextCheck: "Turn the fan off between calls for a week and compare.",
  };
}

/** Signs that the second stage comes too eagerly. */
export function secondStage({ running }: LogAnalysis, limits: LogLimits): Weighed {
  return {
    id: "second-stage-eager",
    title: "The second stage starts too eagerly",
    signs: [
      sign(
        running?.secondStageShare,
        (share) => share * 100 > limits["logs.secondStageShareMaxPct"],
        (share) => `the second stage runs ${pct(share)} of the cooling time`,
      ),
      sign(
        running !== null && running.secondStageShare !== null ? running.duty : null,
        (duty) => duty < 0.5 && (running?.secondStageShare ?? 0) > 0.2,
        (duty) => `cooling runs ${pct(duty)} of the time in all`,
      ),
    ],
    nextCheck: "Read the second-stage start offset and step back at the thermostat.",
  };
}

/** Signs that too much airflow keeps the coil too warm to dry. */
export function airflow({ running, humidity, loadLine }: LogAnalysis, limits: LogLimits): Weighed {
  const longRuns = running === null ? null : shareShorterThan(running.runLengths, limits["logs.shortRunMin"]);
  return {
    id: "airflow-too-high",
    title: "Airflow too high: long runs that do not dry",
    signs: [
      sign(
        longRuns === null || humidity === null || (running?.duty ?? 0) < 0.3 ? null : humidity.dryShare,
        (dryShare) => dryShare < 0.9 && (longRuns ?? 1) * 100 <= limits["logs.shortRunShareMaxPct"],
        (dryShare) =>
          `runs are long and cooling is on ${pct(running?.duty ?? 0)} of the time, ${pct(dryShare)} of the hours are dry`,
      ),
      sign(
        running?.moistureInRuns?.meanGrainsPerLbPerH,
        (change) => change > LITTLE_DRYING,
        (change) =>
          `through runs of 20 min and more indoor moisture moves ${change.toFixed(1)} gr/lb an hour; a coil that dries takes it down by more than ${-LITTLE_DRYING}`,
        2,
      ),
      sign(
        loadLine?.atDesign?.oversizeRatio,
        (ratio) => ratio <= limits["logs.oversizeRatioMax"],
        (ratio) => `capacity is ${ratio.toFixed(2)} of the measured peak load`,
      ),
    ].filter(({ holds }, index, all) => index === 0 || (holds !== null && all[0]?.holds === true)),
    nextCheck: "Measure airflow and the leaving air's dew point.",
  };
}

/** Signs that charge or airflow was lost: the measured load line has moved. */
export function lostCapacity({ loadLine }: LogAnalysis, limits: LogLimits): Weighed {
  return {
    id: "lost-capacity",
    title: "The equipment delivers less than at startup, or the load is larger than designed",
    signs: [
      sign(
        loadLine?.atDesign?.overLoadSummary,
        (ratio) => (ratio - 1) * 100 > limits["logs.loadSummaryApartMaxPct"],
        (ratio) => `by running time the design day's peak load is ${pct(ratio)} of the load summary's`,
      ),
      sign(
        loadLine?.movedBy,
        (share) => share > 0.15,
        (share) =>
          `the last third of the days takes ${pct(Math.abs(share))} ${share < 0 ? "less" : "more"} running for its weather than the first`,
        3,
      ),
    ],
    nextCheck: "Repeat the startup readings: airflow, charge, delivered capacity.",
  };
}

import { waterFromLatent } from "../moisture";
import type { HouseAfternoon } from "./afternoon";

/** One minute: the room temperature as it begins, and what runs during it. */
export type TimelineMinute = {
  readonly minute: number;
  readonly indoorF: number;
  readonly outdoorF: number;
  readonly stage: 0 | 1 | 2;
  readonly fanOn: boolean;
  /** Seconds the fan runs in this minute with the compressor off. */
  readonly idleFanS: number;
};

export type TimelineSummary = {
  readonly starts: number;
  /** From first to last start; null with fewer than two starts. */
  readonly cyclesPerHour: number | null;
  /** Runs that began and ended in the timeline, min. */
  readonly runLengthsMin: readonly number[];
  /** Pauses between two runs, min. */
  readonly restLengthsMin: readonly number[];
  readonly meanRunMin: number | null;
  readonly shortestRunMin: number | null;
  readonly longestRestMin: number | null;
  readonly shortestRestMin: number | null;
  readonly coolingMin: number;
  readonly secondStageMin: number;
  /** Second-stage minutes over all cooling minutes, 0 to 1; null without cooling. */
  readonly secondStageShare: number | null;
  /** Minutes of fan with the compressor off. */
  readonly idleFanMin: number;
  readonly peakIndoorF: number;
  readonly lowestIndoorF: number;
  readonly meanIndoorF: number;
  /** Water the running stages take out, lb, before any of it goes back to the air. */
  readonly condensedLb: number;
};

/**
 * What a timeline amounts to.
 *
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} for inputs that cannot be, naming the field.
 */
export function summarizeTimeline(series: readonly TimelineMinute[], house: HouseAfternoon): TimelineSummary {
  const waterLbPerH = house.stages.map(({ latentBtuh }) => waterFromLatent(latentBtuh, house.setpointF));
  const { runs, rests, startMinutes } = runsAndRests(series);
  const first = startMinutes[0];
  const last = startMinutes.at(-1);
  // One pass: a job's findings run some ten afternoons of hundreds of minutes.
  let coolingMin = 0;
  let secondStageMin = 0;
  let idleFanS = 0;
  let indoorSumF = 0;
  let condensedLb = 0;
  let peakIndoorF = Number.NEGATIVE_INFINITY;
  let lowestIndoorF = Number.POSITIVE_INFINITY;
  for (const minute of series) {
    const { stage, indoorF } = minute;
    if (stage > 0) coolingMin += 1;
    if (stage === 2) secondStageMin += 1;
    if (stage > 0) condensedLb += (waterLbPerH[stage - 1] ?? 0) / 60;
    idleFanS += minute.idleFanS;
    indoorSumF += indoorF;
    peakIndoorF = Math.max(peakIndoorF, indoorF);
    lowestIndoorF = Math.min(lowestIndoorF, indoorF);
  }
  return {
    starts: startMinutes.length,
    cyclesPerHour:
      first === undefined || last === undefined || last === first
        ? null
        : ((startMinutes.length - 1) * 60) / (last - first),
    runLengthsMin: runs,
    restLengthsMin: rests,
    meanRunMin: runs.length === 0 ? null : sum(runs) / runs.length,
    shortestRunMin: runs.length === 0 ? null : Math.min(...runs),
    longestRestMin: rests.length === 0 ? null : Math.max(...rests),
    shortestRestMin: rests.length === 0 ? null : Math.min(...rests),
    coolingMin,
    secondStageMin,
    secondStageShare: coolingMin === 0 ? null : secondStageMin / coolingMin,
    idleFanMin: idleFanS / 60,
    peakIndoorF,
    lowestIndoorF,
    meanIndoorF: indoorSumF / series.length,
    condensedLb,
  };
}

/** Whole runs, the rests between runs, and the minute of each start. */
function runsAndRests(series: readonly TimelineMinute[]) {
  const runs: number[] = [];
  const rests: number[] = [];
  const startMinutes: number[] = [];
  let stopped: number | null = null;
  for (const { minute, stage } of series) {
    const wasOn = minute > 0 && (series[minute - 1]?.stage ?? 0) > 0;
    if (stage > 0 && !wasOn) {
      startMinutes.push(minute);
      if (stopped !== null) rests.push(minute - stopped);
    }
    if (stage === 0 && wasOn) {
      runs.push(minute - (startMinutes.at(-1) ?? 0));
      stopped = minute;
    }
  }
  return { runs, rests, startMinutes };
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}

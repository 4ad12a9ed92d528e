import type { LogAnalysis } from "./analyze-log";
import type { LikelyCause } from "./cause-signs";
import { type LogLimits, requireLogLimits } from "./judged";
import { mildWeather, outdoorMoisture, sensor, setpointHabits } from "./moisture-causes";
import { airflow, fanBetweenCalls, lostCapacity, secondStage, shortCycles } from "./running-causes";

/**
 * Likely causes, the best supported first. Only causes with at least as much for them as against them are given; a sign the log
 * cannot show counts neither way. They are hints with their evidence, never verdicts.
 *
 * @param analysis - From `analyzeLog`.
 * @param limits - Limits in force; ranges at `logsLimits`.
 * @returns Causes, the best supported first.
 * @throws {@link OutOfRangeError} for a limit outside its range.
 * @see common practice, no source.
 */
export function likelyCauses(analysis: LogAnalysis, limits: LogLimits): readonly LikelyCause[] {
  requireLogLimits(limits);
  const causes = [
    shortCycles(analysis, limits),
    fanBetweenCalls(analysis, limits),
    secondStage(analysis, limits),
    mildWeather(analysis, limits),
    outdoorMoisture(analysis, limits),
    setpointHabits(analysis),
    airflow(analysis, limits),
    lostCapacity(analysis, limits),
    sensor(analysis, limits),
  ];
  return causes
    .map(({ signs, ...cause }) => ({
      score: signs.reduce(
        (sum, { holds, weight }) => sum + (holds === true ? weight : holds === false ? -1 : 0),
        0,
      ),
      cause: {
        ...cause,
        evidence: signs.flatMap(({ holds, words }) => (holds === true ? [words] : [])),
        against: signs.flatMap(({ holds, words }) => (holds === false ? [words] : [])),
      },
    }))
    .filter(({ score, cause }) => score >= 0 && cause.evidence.length > 0)
    .sort((a, b) => b.score - a.score)
    .map(({ cause }) => cause);
}

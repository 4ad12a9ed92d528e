import type { LogAnalysis } from "./analyze-log";
import type { LikelyCause } from "./cause-signs";
import { hungElsewhere } from "./dry-told";
import { type LogLimits, requireLogLimits } from "./judged";
import { insideMoisture, mildWeather, outdoorMoisture, sensor, setpointHabits } from "./moisture-causes";
import { airflow, fanBetweenCalls, lostCapacity, secondStage, shortCycles } from "./running-causes";

const hoursRead = ({ period }: LogAnalysis) => (period.samples * period.intervalMin) / 60;

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
  // What is too short for a verdict is too short for a cause.
  if (hoursRead(analysis) < limits["logs.leastHours"]) return [];
  // Of readings from elsewhere nothing follows but where they come from.
  const isAway = hungElsewhere(analysis, limits);
  const causes = isAway
    ? [sensor(analysis, limits)]
    : [
        shortCycles(analysis, limits),
        fanBetweenCalls(analysis, limits),
        secondStage(analysis, limits),
        mildWeather(analysis, limits),
        outdoorMoisture(analysis, limits),
        insideMoisture(analysis, limits),
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

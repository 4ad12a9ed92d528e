import type { LogAnalysis } from "./analyze-log";
import { pct } from "./cause-signs";
import { VERY_HUMID_DEW_POINT_F } from "./humid-days";

/** What the trade expects of a good job on a very humid day, and how this house compares, in sentences. */
export type TradePicture = { readonly expected: string; readonly compared: readonly string[] };

/**
 * The house's very humid days beside the trade's picture of a good job. A comparison in words, never a verdict.
 *
 * @param analysis - From `analyzeLog`.
 * @returns The picture and the comparison.
 * @see common practice, no source.
 */
export function tradePicture({ humidDays: days, running }: LogAnalysis): TradePicture {
  const expected =
    "On a very humid day indoor humidity stays between 50 and 60 %, the first stage runs long, the second stage briefly in the afternoon (common practice, no source).";
  if (days === null) {
    return {
      expected,
      compared: [
        `The log holds no very humid day (mean outdoor dew point ${VERY_HUMID_DEW_POINT_F} °F or more) with outdoor readings, so there is nothing to compare.`,
      ],
    };
  }
  const { firstStageShare: first, secondStageAfternoonShare: afternoon } = days;
  const inBand = days.share50To60 >= 0.8 ? "as in" : "unlike";
  return {
    expected,
    compared: [
      `On ${days.days} very humid ${days.days === 1 ? "day" : "days"} humidity was from 50 to 60 % for ${pct(days.share50To60)} of the time, ${days.meanRhPct.toFixed(0)} % in the mean: ${inBand} the picture.`,
      ...(running?.runs
        ? [
            `Over the whole log the median cooling run is ${running.runs.medianMin.toFixed(0)} min: ${running.runs.medianMin >= 30 ? "long runs, as in" : "shorter than in"} the picture.`,
          ]
        : []),
      ...(first === null
        ? ["The log does not tell the stages apart."]
        : [
            `The first stage alone did ${pct(first)} of the cooling time on those days: ${first >= 0.6 ? "as in" : "less than in"} the picture.`,
          ]),
      ...(afternoon === null
        ? []
        : [
            `${pct(afternoon)} of the second stage's time fell between 12:00 and 19:00: ${afternoon >= 0.6 ? "as in" : "unlike"} the picture.`,
          ]),
    ],
  };
}

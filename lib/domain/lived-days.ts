/** One logger's readings of one local day; NaN for a gap. */
export type LivedDay = {
  /** ISO day of the house's own clock. */
  readonly day: string;
  readonly offsetMinutes: Float64Array;
  readonly indoorRhPct: Float64Array | null;
  readonly indoorDbF: Float64Array | null;
  readonly outdoorDbF: Float64Array | null;
  readonly outdoorRhPct: Float64Array | null;
};

export type HumidSince = {
  readonly hours: number;
  readonly hoursAbove: number;
  /** Share of the hours at or below the limit, %. */
  readonly dryPct: number;
};

/**
 * Hours of a run of days above a humidity limit. A reading stands for the time to the next one, at most an hour,
 * so that a gap counts for nothing.
 *
 * @param limitPct - The job's limit, % RH.
 * @returns `null` without any reading.
 */
export function humidSince(days: readonly LivedDay[], limitPct: number): HumidSince | null {
  let minutes = 0;
  let above = 0;
  for (const { offsetMinutes, indoorRhPct } of days) {
    if (!indoorRhPct) continue;
    const usual = usualStep(offsetMinutes);
    offsetMinutes.forEach((at, index) => {
      const humidity = indoorRhPct[index] ?? Number.NaN;
      if (Number.isNaN(humidity)) return;
      const next = offsetMinutes[index + 1];
      const step = Math.min(60, next === undefined ? usual : next - at);
      minutes += step;
      if (humidity > limitPct) above += step;
    });
  }
  if (minutes === 0) return null;
  return { hours: minutes / 60, hoursAbove: above / 60, dryPct: 100 * (1 - above / minutes) };
}

/** The smallest step between readings, min; a day with one reading counts it for five. */
function usualStep(offsets: Float64Array): number {
  let least = Number.POSITIVE_INFINITY;
  for (let index = 1; index < offsets.length; index += 1)
    least = Math.min(least, (offsets[index] ?? 0) - (offsets[index - 1] ?? 0));
  return Number.isFinite(least) && least > 0 ? least : 5;
}

const mean = (values: Float64Array | null): number | null => {
  const known = values ? Array.from(values).filter((value) => !Number.isNaN(value)) : [];
  return known.length === 0 ? null : known.reduce((sum, value) => sum + value, 0) / known.length;
};

/** The days in a sentence each: outdoors and indoors, as the house's own log has them. `null` without any. */
export function daysInWords(days: readonly LivedDay[]): string | null {
  const sentences = days.flatMap((day) => {
    const [outdoorF, outdoorRh] = [mean(day.outdoorDbF), mean(day.outdoorRhPct)];
    const [indoorF, indoorRh] = [mean(day.indoorDbF), mean(day.indoorRhPct)];
    const outdoors =
      outdoorF === null
        ? "outdoors not logged"
        : `outdoors ${outdoorF.toFixed(0)} °F${outdoorRh === null ? "" : ` and ${outdoorRh.toFixed(0)} %`}`;
    const indoors =
      indoorRh === null
        ? null
        : `indoors ${indoorF === null ? "" : `${indoorF.toFixed(0)} °F and `}${indoorRh.toFixed(0)} %`;
    return indoors === null && outdoorF === null
      ? []
      : [`${day.day}: ${[outdoors, indoors].filter((part) => part !== null).join(", ")} on average`];
  });
  return sentences.length === 0 ? null : sentences.join("; ");
}

/** One logger's readings of one local day; NaN for a gap. */
export type LivedDay = {
  /** ISO day of the house's own clock. */
  readonly day: string;
  readonly indoorRhPct: Float64Array | null;
  readonly indoorDbF: Float64Array | null;
  readonly outdoorDbF: Float64Array | null;
  readonly outdoorRhPct: Float64Array | null;
};

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

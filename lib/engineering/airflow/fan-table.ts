import { ImpossibleStateError } from "../errors";
import { type Cfm, cfm, requireRange } from "../units";

/** One line of the maker's fan table. */
export type FanPoint = {
  /** The airflow setting this line belongs to, in the maker's or company's own words. */
  readonly setting: string;
  readonly externalStaticInWc: number;
  readonly airflowCfm: number;
  /** Fan power, W, where the maker prints it. */
  readonly powerW: number | null;
};

/**
 * The points of one setting in order of static pressure, checked.
 *
 * @throws {@link ImpossibleStateError} when the setting has fewer than two points or two at the same static.
 * @throws {@link OutOfRangeError} for a static outside 0 to 5 in. w.c., an airflow outside 1 to 20,000 cfm or a power outside 0 to 20,000 W.
 */
export function fanCurve(table: readonly FanPoint[], setting: string): readonly FanPoint[] {
  const points = table
    .filter((point) => point.setting === setting)
    .toSorted((a, b) => a.externalStaticInWc - b.externalStaticInWc);
  if (points.length < 2) {
    throw new ImpossibleStateError(
      `The fan table has ${points.length} point(s) for setting "${setting}"; at least two are needed. Add its lines from the maker's table.`,
      ["fanTable", "setting"],
    );
  }
  for (const [index, point] of points.entries()) {
    requireRange("fan table static pressure", point.externalStaticInWc, "in. w.c.", 0, 5);
    requireRange("fan table airflow", point.airflowCfm, "cfm", 1, 20_000);
    if (point.powerW !== null) requireRange("fan table power", point.powerW, "W", 0, 20_000);
    if (points[index + 1]?.externalStaticInWc === point.externalStaticInWc) {
      throw new ImpossibleStateError(
        `The fan table gives two airflows for setting "${setting}" at ${point.externalStaticInWc} in. w.c.; keep one.`,
        ["fanTable"],
      );
    }
  }
  return points;
}

/**
 * Airflow at a measured external static, read from the maker's table.
 *
 * @param input.table - The maker's fan table.
 * @param input.setting - The airflow setting in use.
 * @param input.externalStaticInWc - Measured external static, in. w.c., 0 to 5 and within the table.
 * @returns Airflow, cfm, linear between the two lines around it.
 * @throws {@link OutOfRangeError} when the static lies beyond the table: it is never extended.
 * @throws {@link ImpossibleStateError} for an unusable table.
 * @see ANSI/RESNET/ICC 310, airflow from the maker's static pressure table (recalled).
 */
export function airflowFromStaticTable(input: {
  readonly table: readonly FanPoint[];
  readonly setting: string;
  readonly externalStaticInWc: number;
}): Cfm {
  const { externalStaticInWc: static_ } = input;
  const points = fanCurve(input.table, input.setting);
  const lowest = points.at(0)?.externalStaticInWc ?? Number.NaN;
  const highest = points.at(-1)?.externalStaticInWc ?? Number.NaN;
  requireRange("external static pressure", static_, "in. w.c.", lowest, highest);
  for (const [low, high] of segments(points)) {
    if (static_ > high.externalStaticInWc) continue;
    const part = (static_ - low.externalStaticInWc) / (high.externalStaticInWc - low.externalStaticInWc);
    return cfm(between(low.airflowCfm, high.airflowCfm, part));
  }
  return cfm(points.at(-1)?.airflowCfm ?? Number.NaN);
}

/** Neighbouring pairs of a curve. */
export function segments(points: readonly FanPoint[]): readonly (readonly [FanPoint, FanPoint])[] {
  return points.flatMap((low, index) => {
    const high = points[index + 1];
    return high === undefined ? [] : [[low, high] as const];
  });
}

/**
 * Linear interpolation, exact at both ends.
 *
 * @param low - Value at part 0, any unit.
 * @param high - Value at part 1, the same unit.
 * @param part - 0 to 1.
 * @returns Value in the unit of its ends.
 * @see Straight line (computed).
 */
export function between(low: number, high: number, part: number): number {
  return low * (1 - part) + high * part;
}

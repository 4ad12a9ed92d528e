import { ImpossibleStateError } from "../errors";
import { requireRange } from "../units";

/** What happened to a house, one element a sample; made from a log. Every number is there: samples with gaps are left out before. */
export type HouseLog = {
  /** Minutes a sample stands for, 1 to 60. */
  readonly intervalMin: number;
  readonly pressurePsia: number;
  /** 1 where a sample does not follow the one before it, the first among them. */
  readonly startsAnew: Uint8Array;
  /** Days of the house's clock, counted from anywhere. */
  readonly day: Int32Array;
  /** 0 to 23. */
  readonly clockHour: Uint8Array;
  readonly indoorF: Float64Array;
  /** lb/lb */
  readonly indoorRatio: Float64Array;
  readonly outdoorF: Float64Array;
  readonly outdoorRatio: Float64Array;
  readonly windMph: Float64Array;
  /** Through the windows, Btu/h. */
  readonly sunBtuh: Float64Array;
  /** Sensible heat the system took out (negative: put in), Btu/h, mean over the sample. */
  readonly cooledBtuh: Float64Array;
  /** Water the system and a dehumidifier took out (negative: more dried back off the coil), lb/h, mean over the sample. */
  readonly driedLbPerH: Float64Array;
  /** Outdoor air by fan, cfm. */
  readonly ventilationCfm: Float64Array;
};

const LEAST_DAYS = 4;
/** After a gap mass and furnishings are not where the air is: so long nothing is compared, h. */
const SETTLING_H = 24;
/**
 * Which samples may be compared: mass and furnishings take a day after a gap to be where the air is.
 *
 * @param log - Checked by {@link requireLog}.
 * @returns 1 where the log has run for a day since its last gap.
 * @see Common practice, no source.
 */
export function settledSamples(log: HouseLog): Uint8Array {
  let samples = 0;
  return log.startsAnew.map((anew) => {
    samples = anew === 1 ? 0 : samples + 1;
    return samples * log.intervalMin >= SETTLING_H * 60 ? 1 : 0;
  });
}

const COLUMNS = [
  ["indoorF", "°F", 30, 130],
  ["indoorRatio", "lb/lb", 0, 0.05],
  ["outdoorF", "°F", -60, 140],
  ["outdoorRatio", "lb/lb", 0, 0.05],
  ["windMph", "mph", 0, 150],
  ["sunBtuh", "Btu/h", 0, 1e6],
  ["cooledBtuh", "Btu/h", -1e6, 1e6],
  ["driedLbPerH", "lb/h", -100, 100],
  ["ventilationCfm", "cfm", 0, 2_000],
] as const;

/**
 * Refuses a log no house can be fitted to.
 *
 * @param log - Ranges at {@link HouseLog}.
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} naming the column.
 */
export function requireLog(log: HouseLog): void {
  requireRange("intervalMin", log.intervalMin, "min", 1, 60);
  requireRange("pressurePsia", log.pressurePsia, "psia", 6, 17);
  const { length } = log.indoorF;
  for (const [name, unit, min, max] of COLUMNS) {
    const column = log[name];
    if (column.length !== length) {
      throw new ImpossibleStateError(`${name} has ${column.length} samples and indoorF ${length}.`, [
        name,
        "indoorF",
      ]);
    }
    for (const value of column) requireRange(name, value, unit, min, max);
  }
  if ([log.day, log.clockHour, log.startsAnew].some((column) => column.length !== length)) {
    throw new ImpossibleStateError("day, clockHour and startsAnew need one element a sample.", ["day"]);
  }
  const days = new Set(log.day).size;
  const whole = settledSamples(log).reduce((sum, one) => sum + one, 0) * log.intervalMin >= 3 * 24 * 60;
  if (!whole || days < LEAST_DAYS || log.startsAnew[0] !== 1) {
    throw new ImpossibleStateError(
      `A fit needs ${LEAST_DAYS} days, one of them held out and three without a gap in the day before; the log has ${days}.`,
      ["day", "startsAnew"],
    );
  }
}

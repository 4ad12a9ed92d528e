import { requireRange } from "../units";
import { FIT_BOUNDS, FIT_FACTORS, type FitFactors } from "./fit-factors";
import { freeRun } from "./free-run";
import { type HouseModel, requireHouse } from "./house";
import { type HouseLog, requireLog, settledSamples } from "./house-log";
import type { ForecastHouse, UncertainNumber } from "./house-members";
import { boundedLeastSquares } from "./least-squares";

/** Mean error of the simulated rooms against the measured ones, root mean square. */
export type FitError = {
  readonly days: number;
  readonly temperatureF: number;
  readonly grainsPerLb: number;
};

export type HouseFit = {
  readonly house: HouseModel;
  readonly factors: FitFactors;
  /** The factors with what the log leaves open, two standard errors either way within the bounds. */
  readonly uncertain: readonly UncertainNumber[];
  /** Over the days fitted, before and after. */
  readonly before: FitError;
  readonly fitted: FitError;
  /** Over days the fit has not seen. */
  readonly heldOut: FitError;
  readonly heldOutBefore: FitError;
  readonly steps: number;
};

/** Every so many days one is held out. */
const HELD_OUT_EVERY = 4;
/** What counts as one unit of error: half a degree, and five grains, as good sensors differ (common practice, no source). */
const UNIT_F = 0.5;
const UNIT_RATIO = 5 / 7_000;

/**
 * The house with its assumptions scaled.
 *
 * @param house - As assumed.
 * @param factors - 0.3 to 3 each; `buffer` scales what furnishings hold beyond the air.
 * @returns A house in the ranges of `HouseModel`.
 * @throws {@link OutOfRangeError} outside those ranges.
 * @see Definition (computed).
 */
export function houseWithFactors(house: HouseModel, factors: FitFactors): HouseModel {
  for (const name of FIT_FACTORS) requireRange(name, factors[name], "ratio", FIT_BOUNDS.low, FIT_BOUNDS.high);
  const scaled: HouseModel = {
    ...house,
    conductanceBtuhPerF: house.conductanceBtuhPerF * factors.conductance,
    leakageAreaIn2: house.leakageAreaIn2 * factors.leakage,
    gainsBtuhByHour: house.gainsBtuhByHour.map((one) => one * factors.gains),
    moistureLbPerHByHour: house.moistureLbPerHByHour.map((one) => one * factors.moisture),
    moistureCapacitanceMultiple: 1 + (house.moistureCapacitanceMultiple - 1) * factors.buffer,
  };
  requireHouse(scaled);
  return scaled;
}

/**
 * The fitted house as a forecast takes it: its factors vary within what the log leaves open.
 *
 * @param house - The house the fit began with, ranges at `HouseModel`.
 * @param uncertain - The fit's own `uncertain`, factors 0.3 to 3.
 * @returns For `prepareForecast`.
 * @throws Nothing itself; its `houseAt` as {@link houseWithFactors}.
 * @see `houseMembers` (computed).
 */
export function fittedHouse(house: HouseModel, uncertain: readonly UncertainNumber[]): ForecastHouse {
  return {
    kind: "fitted",
    factors: uncertain,
    houseAt: (factors) => {
      const values = FIT_FACTORS.map((name) => [name, factors[name] ?? 1]);
      return houseWithFactors(house, Object.fromEntries(values) as FitFactors);
    },
  };
}

/**
 * Fits a house to its log: conductance, leakage, inside gains, inside moisture and moisture buffer, so that rooms carried along by what
 * the system took out follow the measured temperature and humidity. Every fourth day is held out and only used to say how well the
 * fitted house tells days it has not seen. Mass, glass and shape stay as assumed.
 *
 * @param house - As assumed, ranges at `HouseModel`.
 * @param log - At least four days; ranges at `HouseLog`.
 * @returns The fitted house, its factors with two standard errors, errors before and after, on fitted and on held-out days; the first
 * day after a gap counts in none of them.
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} naming the field, for a log too short or columns of other lengths.
 * @see Bounded least squares, standard errors by day (recalled); balances at `simulateYear` (physics).
 */
export function fitHouseToLog(house: HouseModel, log: HouseLog): HouseFit {
  requireHouse(house);
  requireLog(log);
  const firstDay = log.day[0] ?? 0;
  const isHeldOut = (index: number) =>
    ((log.day[index] ?? 0) - firstDay) % HELD_OUT_EVERY === HELD_OUT_EVERY - 1;
  const length = log.indoorF.length;
  const settled = settledSamples(log);
  const roomF = new Float64Array(length);
  const roomRatio = new Float64Array(length);
  const residuals = (values: readonly number[]): Float64Array => {
    freeRun(houseWithFactors(house, named(values)), log, roomF, roomRatio);
    const found = new Float64Array(2 * length);
    for (let index = 0; index < length; index++) {
      if (isHeldOut(index) || settled[index] === 0) continue;
      found[index] = ((roomF[index] ?? 0) - (log.indoorF[index] ?? 0)) / UNIT_F;
      found[length + index] = ((roomRatio[index] ?? 0) - (log.indoorRatio[index] ?? 0)) / UNIT_RATIO;
    }
    return found;
  };
  const errors = (values: readonly number[], heldOut: boolean): FitError => {
    freeRun(houseWithFactors(house, named(values)), log, roomF, roomRatio);
    return rootMeanSquare(
      log,
      roomF,
      roomRatio,
      (index) => isHeldOut(index) === heldOut && settled[index] === 1,
    );
  };
  const ones = FIT_FACTORS.map(() => 1);
  const best = boundedLeastSquares(
    residuals,
    ones,
    FIT_FACTORS.map(() => FIT_BOUNDS.low),
    FIT_FACTORS.map(() => FIT_BOUNDS.high),
    // Errors of one day hang together: weather and habits that nobody measured last for hours.
    Int32Array.from({ length: 2 * length }, (_, place) => (log.day[place % length] ?? 0) - firstDay),
  );
  const factors = named(best.values);
  return {
    house: houseWithFactors(house, factors),
    factors,
    uncertain: FIT_FACTORS.map((name, index) => {
      const error = 2 * (best.standardErrors[index] ?? Number.POSITIVE_INFINITY);
      const value = factors[name];
      return {
        name,
        value,
        low: Math.max(FIT_BOUNDS.low, value - error),
        high: Math.min(FIT_BOUNDS.high, value + error),
        unit: "ratio",
        why: "fitted to the log, two standard errors either way",
      };
    }),
    before: errors(ones, false),
    fitted: errors(best.values, false),
    heldOutBefore: errors(ones, true),
    heldOut: errors(best.values, true),
    steps: best.steps,
  };
}

function named(values: readonly number[]): FitFactors {
  return Object.fromEntries(FIT_FACTORS.map((name, index) => [name, values[index] ?? 1])) as FitFactors;
}

function rootMeanSquare(
  log: HouseLog,
  roomF: Float64Array,
  roomRatio: Float64Array,
  counts: (index: number) => boolean,
): FitError {
  const days = new Set<number>();
  let warmth = 0;
  let water = 0;
  let samples = 0;
  for (let index = 0; index < roomF.length; index++) {
    if (!counts(index)) continue;
    days.add(log.day[index] ?? 0);
    const warmer = (roomF[index] ?? 0) - (log.indoorF[index] ?? 0);
    const wetter = 7_000 * ((roomRatio[index] ?? 0) - (log.indoorRatio[index] ?? 0));
    warmth += warmer * warmer;
    water += wetter * wetter;
    samples++;
  }
  const count = Math.max(1, samples);
  return { days: days.size, temperatureF: Math.sqrt(warmth / count), grainsPerLb: Math.sqrt(water / count) };
}

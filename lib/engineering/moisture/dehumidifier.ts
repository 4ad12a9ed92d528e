import { ImpossibleStateError, OutOfRangeError } from "../errors";
import { type Btuh, btuh, type LbPerH, lbPerH, percent, requireRange, type Watts, watts } from "../units";
import { lbPerHFromPintsPerDay } from "./convert";

/** Air at which dehumidifiers are rated. */
export const RATING_CONDITIONS = {
  /** Federal test since 2019. Published. */
  portable: { dryBulbF: 65, relativeHumidityPct: 60 },
  /** Whole-house units. Recalled. */
  wholeHouse: { dryBulbF: 73, relativeHumidityPct: 60 },
} as const;

/** Heat that comes free when 1 lb of water condenses at room temperature, Btu: h_fg near 70 °F (recalled). */
export const CONDENSING_HEAT_BTU_PER_LB = 1_054;
/** Heat of 1 W of electricity, Btu/h (definition of the Btu). */
export const BTUH_PER_W = 3.412;

/** One line of the maker's data. */
export type DehumidifierPoint = {
  readonly dryBulbF: number;
  readonly relativeHumidityPct: number;
  readonly pintsPerDay: number;
  readonly powerW: number;
};

export type DehumidifierPerformance = {
  readonly lbPerH: LbPerH;
  readonly pintsPerDay: number;
  readonly powerW: Watts;
  /** Heat it adds to the room while it runs: its power and the heat of the water it condenses. */
  readonly heatAddedBtuh: Btuh;
};

/**
 * What a dehumidifier does at the house's condition, from the maker's data.
 *
 * Linear between bracketing temperatures and, at each, between bracketing humidities. Never beyond the data: a unit rated at one
 * condition only has no answer at another, and a cooler house always gets less than the rating.
 *
 * @param points - Maker's data: 35 to 110 °F, 10 to 100 % RH, 0.1 to 1,000 pint/day, 1 to 20,000 W. No condition twice.
 * @param dryBulbF - House, °F, 35 to 110 and within the data.
 * @param relativeHumidityPct - House, %, 10 to 100 and within the data.
 * @returns Capacity, power and heat added.
 * @throws {@link OutOfRangeError} outside the data or those ranges.
 * @throws {@link ImpossibleStateError} without points, or with a condition twice.
 * @see The maker's data; linear interpolation (computed).
 */
export function dehumidifierAt(
  points: readonly DehumidifierPoint[],
  dryBulbF: number,
  relativeHumidityPct: number,
): DehumidifierPerformance {
  if (points.length === 0) {
    throw new ImpossibleStateError("Give the maker's capacity at one condition at least.", ["points"]);
  }
  for (const point of points) checkPoint(point);
  requireRange("dryBulbF", dryBulbF, "°F", 35, 110);
  percent(relativeHumidityPct);

  const temperatures = rising(points.map((point) => point.dryBulbF));
  const found = between("dryBulbF", "°F", temperatures, dryBulbF, (temperature) => {
    const lines = points.filter((point) => point.dryBulbF === temperature);
    const humidities = rising(lines.map((point) => point.relativeHumidityPct));
    if (humidities.length !== lines.length) {
      throw new ImpossibleStateError(`The maker's data have one condition twice at ${temperature} °F.`, [
        "points",
      ]);
    }
    return between("relativeHumidityPct", "%", humidities, relativeHumidityPct, (humidity) => {
      const line = lines.find((point) => point.relativeHumidityPct === humidity);
      return line === undefined ? [Number.NaN, Number.NaN] : [line.pintsPerDay, line.powerW];
    });
  });
  const [pints, power] = found;
  return {
    lbPerH: lbPerH(lbPerHFromPintsPerDay(pints)),
    pintsPerDay: pints,
    powerW: watts(power),
    heatAddedBtuh: dehumidifierHeatBtuh(lbPerHFromPintsPerDay(pints), power),
  };
}

/**
 * Heat a dehumidifier adds to the room.
 *
 * @param removedLbPerH - Water it takes, lb/h. 0 to 1,000.
 * @param powerW - Electric power, W. 0 to 20,000.
 * @returns Btu/h, all sensible.
 * @throws {@link OutOfRangeError} outside those ranges.
 * @see First law on the room (physics): all power and the heat of condensation stay in it.
 */
export function dehumidifierHeatBtuh(removedLbPerH: number, powerW: number): Btuh {
  const removed = requireRange("removedLbPerH", removedLbPerH, "lb/h", 0, 1_000);
  const power = requireRange("powerW", powerW, "W", 0, 20_000);
  return btuh(power * BTUH_PER_W + removed * CONDENSING_HEAT_BTU_PER_LB);
}

function checkPoint(point: DehumidifierPoint): void {
  requireRange("points.dryBulbF", point.dryBulbF, "°F", 35, 110);
  requireRange("points.relativeHumidityPct", point.relativeHumidityPct, "%", 10, 100);
  requireRange("points.pintsPerDay", point.pintsPerDay, "pint/day", 0.1, 1_000);
  requireRange("points.powerW", point.powerW, "W", 1, 20_000);
}

function rising(values: readonly number[]): readonly number[] {
  return [...new Set(values)].sort((a, b) => a - b);
}

type Pair = readonly [number, number];

function between(
  name: string,
  unit: string,
  values: readonly number[],
  asked: number,
  at: (value: number) => Pair,
): Pair {
  const below = values.findLast((value) => value <= asked);
  const above = values.find((value) => value >= asked);
  if (below === undefined || above === undefined) {
    throw new OutOfRangeError(name, asked, unit, values[0] ?? 0, values.at(-1) ?? 0);
  }
  const low = at(below);
  if (above === below) return low;
  const high = at(above);
  const share = (asked - below) / (above - below);
  return [low[0] + share * (high[0] - low[0]), low[1] + share * (high[1] - low[1])];
}

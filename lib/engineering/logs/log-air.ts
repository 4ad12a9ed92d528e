import { standardPressurePsia, waterSaturationPressurePsia } from "../air";

/**
 * Moist air for hundreds of thousands of readings: the same equations as `moistAir`, without the wet bulb, which takes
 * nine tenths of its time and no log needs. Tests hold both together. A reading that is no state gives NaN, a gap.
 */
export type LogAir = {
  /** Water vapour pressure, psia. */
  readonly vapourPsia: (dryBulbF: number, relativeHumidityPct: number) => number;
  /** Dew point (frost point below 32 °F), °F, within 0.001 °F of `moistAir`. */
  readonly dewPointF: (vapourPsia: number) => number;
  /** lb/lb. */
  readonly humidityRatio: (vapourPsia: number) => number;
};

const LOWEST_F = -100;
const HIGHEST_F = 150;
/** So that between two entries the straight line in ln p is within 1e-5 °F (its curvature is 1.3e-4 per °F²). */
const STEP_F = 0.1;
/** Molar mass of water over that of dry air, ASHRAE Fundamentals 2017 ch. 1 (published), as in psychrolib. */
const MASS_RATIO = 0.621945;

/**
 * The states of moist air a log needs, at the pressure of the house: dew point and humidity ratio by temperature and humidity.
 *
 * @param elevationFt - Height of the house, ft, −2,000 to 20,000.
 * @throws {@link OutOfRangeError} outside that range.
 */
export function logAir(elevationFt: number): LogAir {
  const pressurePsia = standardPressurePsia(elevationFt);
  const logPressure = logPressureTable();
  const places = placesOf(logPressure);
  return {
    vapourPsia: (dryBulbF, relativeHumidityPct) =>
      Number.isNaN(dryBulbF) || Number.isNaN(relativeHumidityPct)
        ? Number.NaN
        : (saturationPsia(logPressure, dryBulbF) * relativeHumidityPct) / 100,
    dewPointF: (vapourPsia) => inverse(logPressure, places, Math.log(vapourPsia)),
    humidityRatio: (vapourPsia) => (MASS_RATIO * vapourPsia) / (pressurePsia - vapourPsia),
  };
}

let keptTable: Float64Array | null = null;

/** ln p of water, one entry a step; the same for every house, so made once. */
function logPressureTable(): Float64Array {
  const count = Math.round((HIGHEST_F - LOWEST_F) / STEP_F) + 1;
  keptTable ??= Float64Array.from({ length: count }, (_, index) =>
    Math.log(waterSaturationPressurePsia(LOWEST_F + index * STEP_F)),
  );
  return keptTable;
}

/** Saturation pressure by the straight line in ln p between two entries; the formula itself outside the table. */
function saturationPsia(table: Float64Array, dryBulbF: number): number {
  const place = (dryBulbF - LOWEST_F) / STEP_F;
  const low = Math.floor(place);
  const from = table[low];
  const to = table[low + 1];
  if (from === undefined || to === undefined) return waterSaturationPressurePsia(dryBulbF);
  return Math.exp(from + (place - low) * (to - from));
}

let keptPlaces: Uint16Array | null = null;
/** Entries of the table of places for one of ln p: finer, so that a step along the table is seldom needed. */
const FINER = 4;

/** Where in the table an ln p lies, in even steps of ln p: the last entry at or below the step's beginning. */
function placesOf(table: Float64Array): Uint16Array {
  if (keptPlaces !== null) return keptPlaces;
  const count = FINER * table.length;
  const [lowest, highest] = [table[0] ?? 0, table.at(-1) ?? 0];
  let low = 0;
  keptPlaces = Uint16Array.from({ length: count }, (_, index) => {
    const target = lowest + ((highest - lowest) * index) / count;
    while ((table[low + 1] ?? Number.POSITIVE_INFINITY) <= target) low++;
    return low;
  });
  return keptPlaces;
}

/** Temperature whose ln p is `target`; NaN outside the table. */
function inverse(table: Float64Array, places: Uint16Array, target: number): number {
  const lowest = table[0] ?? 0;
  const highest = table[table.length - 1] ?? 0;
  if (!(target >= lowest && target <= highest)) return Number.NaN;
  let low = places[Math.floor(((target - lowest) / (highest - lowest)) * places.length)] ?? table.length - 2;
  // Rounding may have put the step one entry too far.
  while (low > 0 && (table[low] ?? 0) > target) low--;
  while (low < table.length - 2 && (table[low + 1] ?? 0) <= target) low++;
  const from = table[low] ?? 0;
  const to = table[low + 1] ?? 0;
  return LOWEST_F + (low + (target - from) / (to - from)) * STEP_F;
}

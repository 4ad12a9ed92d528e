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
  return {
    vapourPsia: (dryBulbF, relativeHumidityPct) =>
      Number.isNaN(dryBulbF) || Number.isNaN(relativeHumidityPct)
        ? Number.NaN
        : (saturationPsia(logPressure, dryBulbF) * relativeHumidityPct) / 100,
    dewPointF: (vapourPsia) => inverse(logPressure, Math.log(vapourPsia)),
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

/** Temperature whose ln p is `target`; NaN outside the table. */
function inverse(table: Float64Array, target: number): number {
  let low = 0;
  let high = table.length - 1;
  if (!(target >= (table[low] ?? 0) && target <= (table[high] ?? 0))) return Number.NaN;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((table[middle] ?? 0) <= target) low = middle;
    else high = middle;
  }
  const from = table[low] ?? 0;
  const to = table[high] ?? 0;
  return LOWEST_F + (low + (target - from) / (to - from)) * STEP_F;
}

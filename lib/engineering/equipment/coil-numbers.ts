/*
 * What the plain numbers of the coil model mean: its constants, and the places of the one array in which everything else stands. A number
 * handed to a function that is not inlined is put into an object of its own, half a million times a year; in an array it is not.
 */

/** What stays the same from minute to minute. */
export type CoilConstants = {
  readonly pressurePsia: number;
  readonly a0LbPerH: number;
  readonly heldTemperatureF: number;
  readonly fixedApproachF: number;
  readonly approachSlopeFPerBtuh: number;
  readonly frostLimitF: number;
  /** Saturated air at the frost limit, lb/lb: asked for every minute, so kept. */
  readonly frostHumidityRatio: number;
};

/** A coil with its airflow: what follows from the two does not change either. */
export type CoilAtFlow = CoilConstants & {
  /** More than 0. */
  readonly dryAirLbPerH: number;
  /** 0 to 1. */
  readonly bypassFactor: number;
  /** Dry air that touches the surface. */
  readonly contactLbPerH: number;
};

/** Places in the array. */
export const COIL = {
  totalBtuh: 0,
  sensibleBtuh: 1,
  moistureLbPerH: 2,
  leavingDbF: 3,
  leavingHumidityRatio: 4,
  /** Its old value is where the next solution starts from. */
  adpF: 5,
  bypassFactor: 6,
  /** One of {@link COIL_LIMIT}. */
  limitedBy: 7,
  /** Share of the time the compressor runs to make this capacity: below 1 it cycles at its minimum. */
  compressorShare: 8,
  /** 1 when moisture leaves the coil saturated because mixing would have made fog. */
  saturatedLeaving: 9,
  /** Asked: °F, 40…120, above the frost limit. */
  enteringDbF: 10,
  /** Asked: lb/lb, 0 to saturation at the entering dry bulb. */
  enteringHumidityRatio: 11,
  /** Asked of `solveCoil`: most the compressor can give now, more than 0; of `solveCoilAtCapacity`: what it takes from the air. */
  ceilingBtuh: 12,
  /** Asked of `solveCoil`: least it can give without cycling, 0…ceiling. */
  minimumBtuh: 13,
  /** Of the site, psia, 6 to 17: set once, by {@link coilNumbers}. */
  pressurePsia: 18,
  /** From here on: what the parts of the solution hand to each other. */
  enteringEnthalpy: 14,
  surfaceEnthalpy: 15,
  startF: 16,
  leastF: 17,
  /** Of `solveSaturated`: its equation, and where the answer stands. */
  temperatureWeight: 19,
  enthalpyWeight: 20,
  target: 21,
  highestF: 22,
  solvedF: 23,
  /** Asked of a maker's table: °F, −80 to its hottest line. */
  outdoorDbF: 24,
  /** Of `saturateAt`: temperature asked, °F, and what saturated air has there. */
  atF: 25,
  saturatedPsia: 26,
  saturatedRatio: 27,
} as const;

/** Length of the array. */
export const COIL_NUMBERS = 28;

/** Codes in `COIL.limitedBy`. */
export const COIL_LIMIT = { held: 0, ceiling: 1, minimum: 2, frost: 3 } as const;

/**
 * The array, empty but for the site's pressure.
 *
 * @param pressurePsia - Atmospheric pressure, psia, 6 to 17.
 * @returns Zeros, one a place of {@link COIL} (°F, Btu/h, lb/h, lb/lb as the places say), and the pressure in psia.
 * @see The places' own meaning (computed).
 */
export function coilNumbers(pressurePsia: number): Float64Array {
  const numbers = new Float64Array(COIL_NUMBERS);
  numbers[COIL.pressurePsia] = pressurePsia;
  return numbers;
}

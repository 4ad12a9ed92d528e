/*
 * What the plain numbers of the coil model mean: its constants and the places of its output array.
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

/** Places in the output array. */
export const COIL = {
  totalBtuh: 0,
  sensibleBtuh: 1,
  moistureLbPerH: 2,
  leavingDbF: 3,
  leavingHumidityRatio: 4,
  adpF: 5,
  bypassFactor: 6,
  /** One of {@link COIL_LIMIT}. */
  limitedBy: 7,
  /** Share of the time the compressor runs to make this capacity: below 1 it cycles at its minimum. */
  compressorShare: 8,
  /** 1 when moisture leaves the coil saturated because mixing would have made fog. */
  saturatedLeaving: 9,
} as const;

/** Length of the output array. */
export const COIL_OUTPUTS = 10;

/** Codes in `COIL.limitedBy`. */
export const COIL_LIMIT = { held: 0, ceiling: 1, minimum: 2, frost: 3 } as const;

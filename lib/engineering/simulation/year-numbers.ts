/*
 * Places in the plain arrays of the year's loop.
 */

/** What the loop carries from step to step. */
export const STATE = {
  airF: 0,
  massF: 1,
  humidityRatio: 2,
  bufferRatio: 3,
  coilLb: 4,
  stage: 5,
  minutesInState: 6,
  runOnLeftS: 7,
  startLeft: 8,
  capacityBtuh: 9,
  following: 10,
  dehumidifierOn: 11,
} as const;
export const STATE_NUMBERS = 12;

/** Sums over the run: Btu, lb, h, Wh. */
export const SUM = {
  conductionBtu: 0,
  outdoorAirBtu: 1,
  sunBtu: 2,
  gainsBtu: 3,
  fanBtu: 4,
  dehumidifierBtu: 5,
  heatPumpBtu: 6,
  auxiliaryBtu: 7,
  coilSensibleBtu: 8,
  coilEvaporationBtu: 9,
  surfaceBtu: 10,
  insideLb: 11,
  outdoorAirLb: 12,
  coilLb: 13,
  evaporatedLb: 14,
  drainedLb: 15,
  dehumidifierLb: 16,
  surfaceLb: 17,
  compressorWh: 18,
  fanWh: 19,
  dehumidifierWh: 20,
  dehumidifierH: 21,
  fanH: 22,
  firstStageH: 23,
  secondStageH: 24,
  belowSetpointDegreeH: 25,
  aboveSetpointDegreeH: 26,
  hottestF: 27,
  starts: 28,
  frostH: 29,
  coldestInRunF: 30,
} as const;
export const SUMS = 31;

/** Whole minutes; the last place holds everything longer. */
export const RUN_LENGTHS = 241;
/** Relative humidity in steps of 1 %, 0 to 100. */
export const HUMIDITIES = 101;

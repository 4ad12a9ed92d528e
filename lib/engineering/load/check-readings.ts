import { ImpossibleStateError } from "../errors";
import { requireRange } from "../units";
import type { LoadReadings } from "./readings";

type NumberField = {
  [K in keyof LoadReadings]: Extract<LoadReadings[K], number> extends never ? never : K;
}[keyof LoadReadings];

/** Unit, least and most of every number of the load summary. */
const RANGES: { readonly [F in NumberField]: readonly [string, number, number] } = {
  sensibleCoolingBtuh: ["Btu/h", 0, 5_000_000],
  latentCoolingBtuh: ["Btu/h", 0, 5_000_000],
  heatingBtuh: ["Btu/h", 0, 5_000_000],
  indoorCoolingDbF: ["°F", 40, 100],
  indoorCoolingRhPct: ["%", 1, 100],
  indoorHeatingDbF: ["°F", 40, 100],
  outdoorCoolingDbF: ["°F", 32, 140],
  outdoorCoolingWbF: ["°F", 20, 100],
  outdoorHeatingDbF: ["°F", -80, 100],
  weatherCoolingDbF: ["°F", 32, 140],
  weatherHeatingDbF: ["°F", -80, 100],
  wetMildDewPointF: ["°F", -80, 100],
  wetMildDbF: ["°F", 20, 120],
  elevationFt: ["ft", -2_000, 20_000],
  floorAreaFt2: ["ft²", 100, 100_000],
  bedrooms: ["bedrooms", 0, 30],
  houseHeightFt: ["ft", 6, 60],
  leakageCfm50: ["cfm at 50 Pa", 0, 50_000],
  windShieldingFactor: ["ratio", 0.2, 1.5],
  ventilationCfm: ["cfm", 0, 10_000],
  ductLoadBtuh: ["Btu/h", 0, 1_000_000],
  duplicatedGainsBtuh: ["Btu/h", 0, 1_000_000],
  safetyFactorPct: ["%", 0, 200],
};
const NUMBER_FIELDS = Object.keys(RANGES) as readonly NumberField[];

/**
 * Refuses a load summary with a number outside its range or temperatures that contradict each other, naming the fields.
 *
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} for inputs that cannot be, naming the field.
 */
export function checkReadings(readings: LoadReadings): void {
  for (const field of NUMBER_FIELDS) {
    const value = readings[field];
    if (value !== null) requireRange(field, value, ...RANGES[field]);
  }
  refuseAbove(readings, "outdoorCoolingWbF", "outdoorCoolingDbF");
  refuseAbove(readings, "wetMildDewPointF", "wetMildDbF");
}

function refuseAbove(readings: LoadReadings, upper: NumberField, lower: NumberField): void {
  const high = readings[upper];
  const low = readings[lower];
  if (high === null || low === null || high <= low) return;
  throw new ImpossibleStateError(`${upper} ${high} °F is above ${lower} ${low} °F; check which is which`, [
    upper,
    lower,
  ]);
}

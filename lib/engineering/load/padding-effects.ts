import { moistAir, standardPressurePsia } from "../air";
import { outdoorAirLoad } from "./outdoor-air";
import type { LoadReadings } from "./readings";
import { infiltrationCreditCfm } from "./ventilation";

/** Outdoor and indoor heating design closer than this say nothing about the slope between them. */
const LEAST_DIFFERENCE_F = 10;

/**
 * What one °F between indoors and outdoors is worth: the heating load over its own temperature difference.
 *
 * @returns Btu/h per °F; `null` when the heating side of the load is not given or spans less than 10 °F.
 */
export function findHeatLossPerF(readings: LoadReadings): number | null {
  const { heatingBtuh, indoorHeatingDbF, outdoorHeatingDbF } = readings;
  if (heatingBtuh === null || indoorHeatingDbF === null || outdoorHeatingDbF === null) return null;
  const difference = indoorHeatingDbF - outdoorHeatingDbF;
  return difference >= LEAST_DIFFERENCE_F ? heatingBtuh / difference : null;
}

/**
 * Average outdoor air through the leaks, cfm; `null` when the leakage or its factors are not given.
 *
 * @returns cfm.
 * @throws {@link OutOfRangeError} for an input outside its range, naming the field.
 */
export function findAverageLeakageCfm(readings: LoadReadings): number | null {
  const { leakageCfm50, windShieldingFactor, houseHeightFt } = readings;
  if (leakageCfm50 === null || windShieldingFactor === null || houseHeightFt === null) return null;
  return infiltrationCreditCfm({ leakageCfm50, windShieldingFactor, houseHeightFt });
}

/**
 * Latent load that a lower design humidity adds, through ventilation and leaks, Btu/h.
 * `null` when ventilation, leakage or elevation is not given.
 *
 * @param indoorDbF - Indoor design dry bulb, °F, 50 to 100.
 * @param designRhPct - Indoor design humidity of the load, %, 1 to 100.
 * @param limitRhPct - Humidity the house is meant to be held at, %, 1 to 100.
 * @returns Btu/h.
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} for inputs that cannot be, naming the field.
 * @see Latent heat of the water between the two indoor states (physics).
 */
export function findHumidityEffectBtuh(
  readings: LoadReadings,
  indoorDbF: number,
  designRhPct: number,
  limitRhPct: number,
): number | null {
  const leakageCfm = findAverageLeakageCfm(readings);
  if (leakageCfm === null || readings.ventilationCfm === null || readings.elevationFt === null) return null;
  const place = { dryBulbF: indoorDbF, pressurePsia: standardPressurePsia(readings.elevationFt) };
  return outdoorAirLoad({
    airflowCfm: readings.ventilationCfm + leakageCfm,
    outdoor: moistAir({ ...place, relativeHumidityPct: limitRhPct }),
    indoor: moistAir({ ...place, relativeHumidityPct: designRhPct }),
  }).totalBtuh;
}

/**
 * Cooling load the average leakage carries at design, Btu/h; `null` when something for it is not given.
 *
 * @returns Btu/h.
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} for inputs that cannot be, naming the field.
 */
export function findLeakageLoadBtuh(readings: LoadReadings): number | null {
  const { indoorCoolingDbF, indoorCoolingRhPct, outdoorCoolingDbF, outdoorCoolingWbF, elevationFt } =
    readings;
  const airflowCfm = findAverageLeakageCfm(readings);
  if (
    airflowCfm === null ||
    indoorCoolingDbF === null ||
    indoorCoolingRhPct === null ||
    outdoorCoolingDbF === null ||
    outdoorCoolingWbF === null ||
    elevationFt === null
  ) {
    return null;
  }
  const pressurePsia = standardPressurePsia(elevationFt);
  return outdoorAirLoad({
    airflowCfm,
    outdoor: moistAir({ dryBulbF: outdoorCoolingDbF, wetBulbF: outdoorCoolingWbF, pressurePsia }),
    indoor: moistAir({ dryBulbF: indoorCoolingDbF, relativeHumidityPct: indoorCoolingRhPct, pressurePsia }),
  }).totalBtuh;
}

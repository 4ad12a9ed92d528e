import { type Cfm, cfm, type FahrenheitDifference, fahrenheitDifference, requireRange } from "../units";

/** Btu/h per cfm and °F as the design method rounds it (1.08 exact for standard air, see `measured-airflow.ts`). */
const DESIGN_SENSIBLE_FACTOR = 1.1;

/**
 * Room minus supply air temperature to design for, by the sensible ratio of the load.
 * A moist load (low ratio) wants colder air, so less of it.
 *
 * @param sensibleRatio - Sensible over total cooling load. 0 to 1.
 * @returns 21 °F below 0.80, 19 °F from 0.80 to 0.85, 17 °F above 0.85.
 * @throws {@link OutOfRangeError} outside that range.
 * @see ANSI/ACCA 3 Manual S-2014, supply temperature difference by sensible ratio (recalled).
 */
export function supplyDifferenceF(sensibleRatio: number): FahrenheitDifference {
  requireRange("sensible ratio", sensibleRatio, "", 0, 1);
  if (sensibleRatio < 0.8) return fahrenheitDifference(21);
  if (sensibleRatio <= 0.85) return fahrenheitDifference(19);
  return fahrenheitDifference(17);
}

/**
 * Airflow that carries the sensible load at a chosen supply temperature difference.
 *
 * @param sensibleLoadBtuh - Sensible cooling load, Btu/h. 1 to 1,000,000.
 * @param supplyDifferenceF - Room minus supply air, °F. 5 to 35.
 * @param densityRatio - Site air density over standard air (site pressure / 14.696 psia). 0.5 to 1.1.
 * @returns Airflow, cfm.
 * @throws {@link OutOfRangeError} outside those ranges, or when the airflow exceeds 100,000 cfm.
 * @see ANSI/ACCA 3 Manual S-2014: cfm = sensible / (1.1 · TD · density ratio) (recalled; arithmetic in tests).
 */
export function designAirflowCfm(
  sensibleLoadBtuh: number,
  supplyDifferenceF: number,
  densityRatio: number,
): Cfm {
  requireRange("sensible load", sensibleLoadBtuh, "Btu/h", 1, 1_000_000);
  requireRange("supply temperature difference", supplyDifferenceF, "°F", 5, 35);
  requireRange("air density ratio", densityRatio, "", 0.5, 1.1);
  return cfm(sensibleLoadBtuh / (DESIGN_SENSIBLE_FACTOR * supplyDifferenceF * densityRatio));
}

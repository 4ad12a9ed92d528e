import { requireRange } from "../units";
import { type Reading, uncertainReading } from "./instrument";

/** Every reading of a startup: its unit, the range a working instrument can show, and its words in a sentence. */
export const READINGS = {
  airflowCfm: { unit: "cfm", min: 50, max: 20_000, words: "airflow measurement" },
  returnDryBulbF: { unit: "°F", min: 20, max: 120, words: "return dry-bulb reading" },
  returnWetBulbF: { unit: "°F", min: 10, max: 110, words: "return wet-bulb reading" },
  returnRelativeHumidityPct: { unit: "%", min: 1, max: 100, words: "return relative-humidity reading" },
  supplyDryBulbF: { unit: "°F", min: 20, max: 180, words: "supply dry-bulb reading" },
  supplyWetBulbF: { unit: "°F", min: 10, max: 120, words: "supply wet-bulb reading" },
  supplyRelativeHumidityPct: { unit: "%", min: 1, max: 100, words: "supply relative-humidity reading" },
  outdoorDryBulbF: { unit: "°F", min: -60, max: 140, words: "outdoor dry-bulb reading" },
  externalStaticInWc: { unit: "in. w.c.", min: 0, max: 5, words: "static pressure reading" },
  suctionPressurePsig: { unit: "psig", min: -14, max: 700, words: "suction pressure reading" },
  liquidPressurePsig: { unit: "psig", min: -14, max: 700, words: "liquid pressure reading" },
  suctionLineF: { unit: "°F", min: -60, max: 200, words: "suction line temperature reading" },
  liquidLineF: { unit: "°F", min: -60, max: 200, words: "liquid line temperature reading" },
  outdoorUnitVolts: { unit: "V", min: 1, max: 700, words: "outdoor unit voltage reading" },
  outdoorUnitAmps: { unit: "A", min: 0.1, max: 400, words: "outdoor unit current reading" },
  outdoorUnitPowerW: { unit: "W", min: 10, max: 100_000, words: "outdoor unit power reading" },
  fanPowerW: { unit: "W", min: 1, max: 5_000, words: "fan power reading" },
  condensateLb: { unit: "lb", min: 0, max: 100, words: "weight of the drain water" },
} as const satisfies Record<
  string,
  { readonly unit: string; readonly min: number; readonly max: number; readonly words: string }
>;

export type ReadingName = keyof typeof READINGS;

/** `null`: not taken. */
export type Readings = { readonly [K in ReadingName]: Reading | null };

export const READING_NAMES = Object.keys(READINGS) as readonly ReadingName[];

/**
 * Refuses a reading no working instrument can show, or an instrument whose accuracy does not fit it, naming the field.
 *
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} for inputs that cannot be, naming the field.
 */
export function requireReadings(readings: Readings, fieldPrefix: string): void {
  for (const name of READING_NAMES) {
    const { unit, min, max } = READINGS[name];
    const reading = readings[name];
    if (reading === null) continue;
    const field = `${fieldPrefix}readings.${name}`;
    requireRange(field, reading.value, unit, min, max);
    const { standardUncertainty } = uncertainReading(field, reading, unit, 1);
    requireRange(`accuracy of the instrument of ${field}`, standardUncertainty, unit, 0, max - min);
  }
}

/** The readings that are missing of those a check needs. */
export function missingReadings(readings: Readings, needed: readonly ReadingName[]): readonly ReadingName[] {
  return needed.filter((name) => readings[name] === null);
}

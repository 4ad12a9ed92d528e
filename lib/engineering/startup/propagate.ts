import { ImpossibleStateError } from "../errors";
import { uncertainReading } from "./instrument";
import { READINGS, type ReadingName, type Readings } from "./readings";
import type { UncertainInput } from "./with-uncertainty";

/** Readings made ready for {@link withUncertainty}, with the names of those whose accuracy is not known. */
export type PreparedReadings<N extends ReadingName> = {
  readonly inputs: Readonly<Record<N, UncertainInput>>;
  readonly unknownAccuracy: readonly N[];
};

/**
 * Takes the named readings out of a stage as uncertain inputs.
 *
 * @param systematicShare - Share of an instrument's uncertainty common to all its readings. 0 to 1.
 * @throws {@link ImpossibleStateError} naming a reading that is missing or whose instrument is stated in another unit.
 */
export function prepareReadings<N extends ReadingName>(
  readings: Pick<Readings, N>,
  names: readonly N[],
  systematicShare: number,
): PreparedReadings<N> {
  const entries = names.map((name) => {
    const reading = readings[name];
    if (reading === null)
      throw new ImpossibleStateError(`${name} is missing; take this reading first.`, [name]);
    return [name, uncertainReading(name, reading, READINGS[name].unit, systematicShare)] as const;
  });
  return {
    inputs: Object.fromEntries(entries) as Record<N, UncertainInput>,
    unknownAccuracy: names.filter((name) => readings[name]?.instrument === null),
  };
}

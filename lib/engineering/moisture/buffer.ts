import type { MoistAir } from "../air";
import { type Minutes, minutes, type Pounds, pounds, requireRange } from "../units";

/**
 * Water taken up by the air and the furnishings of a house while its humidity rises, as a multiple of what the air alone takes.
 *
 * The multiple (effective capacitance) is a setting of the house model: 1 is air alone; 10 to 25 is usual for furnished
 * houses (from memory, verify).
 *
 * @param input - `volumeFt3` of the house, 100 to 1,000,000; `capacitanceMultiple` 1 to 100; `from` and `to`, indoor air.
 * @returns lb; negative when the house dries.
 * @throws {@link OutOfRangeError} outside those ranges.
 * @see Effective-capacitance model of moisture buffering (physics; size of the multiple unverified).
 */
export function bufferedMoistureLb(input: {
  readonly volumeFt3: number;
  readonly capacitanceMultiple: number;
  readonly from: MoistAir;
  readonly to: MoistAir;
}): Pounds {
  const dryAirLb = checkedVolume(input.volumeFt3) / input.from.specificVolumeFt3PerLb;
  const multiple = checkedMultiple(input.capacitanceMultiple);
  return pounds(multiple * dryAirLb * (input.to.humidityRatio - input.from.humidityRatio));
}

/**
 * Time in which 63 % of a step of the incoming air's humidity has reached the house.
 *
 * @param input - `volumeFt3` 100 to 1,000,000; `capacitanceMultiple` 1 to 100; `airExchangeCfm` 1 to 100,000, outdoor air at the
 * indoor density.
 * @returns Minutes.
 * @throws {@link OutOfRangeError} outside those ranges.
 * @see First-order water balance (physics): multiple · volume / airflow.
 */
export function bufferTimeConstant(input: {
  readonly volumeFt3: number;
  readonly capacitanceMultiple: number;
  readonly airExchangeCfm: number;
}): Minutes {
  const exchange = requireRange("airExchangeCfm", input.airExchangeCfm, "cfm", 1, 100_000);
  return minutes((checkedMultiple(input.capacitanceMultiple) * checkedVolume(input.volumeFt3)) / exchange);
}

function checkedVolume(volumeFt3: number): number {
  return requireRange("volumeFt3", volumeFt3, "ft³", 100, 1e6);
}

function checkedMultiple(multiple: number): number {
  return requireRange("capacitanceMultiple", multiple, "ratio", 1, 100);
}

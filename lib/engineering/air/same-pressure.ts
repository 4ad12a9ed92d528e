import { ImpossibleStateError } from "../errors";
import type { MoistAir } from "./moist-air";

/** A fan or coil changes the pressure by far less; a larger gap means the states belong to different sites. */
const LARGEST_GAP = 0.01;

/**
 * Refuses to combine states whose atmospheric pressures differ by more than 1 %.
 *
 * @param one - State of air.
 * @param other - State of air at the same site.
 * @param fields - Names of the two inputs, for the refusal.
 * @throws {@link ImpossibleStateError} naming the fields.
 */
export function requireSamePressure(one: MoistAir, other: MoistAir, fields: readonly string[]): void {
  if (Math.abs(one.pressurePsia - other.pressurePsia) <= LARGEST_GAP * one.pressurePsia) return;
  throw new ImpossibleStateError(
    `air at ${one.pressurePsia} psia and air at ${other.pressurePsia} psia belong to different sites; give both at the site's pressure`,
    fields,
  );
}

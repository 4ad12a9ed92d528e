/*
 * Water on the coil. While it runs, what it takes first fills the coil and then drains. While the fan blows over the resting coil
 * water goes back to the air at a rate that falls linearly with time, as Henderson & Rengarajan 1996 have it:
 *   γ·m (1 − γt/(2·t_wet)), from a full coil of m·t_wet.
 * What is then left is full·(1 − γt/(2·t_wet))²; so with u = √(left/full), u falls by γ/(2·t_wet) a second, wherever it begins:
 * the same law without a clock, exact for any step.
 */

/**
 * Water left on the coil after the fan has blown over it.
 *
 * @param storeLb - Water on the coil, 0 to `fullLb`.
 * @param fullLb - Most it holds, lb, more than 0.
 * @param firstLbPerH - Evaporation off the full coil into the air as it is, lb/h, 0 or more.
 * @param hours - Length, h, 0 or more.
 * @returns lb.
 * @see Henderson & Rengarajan 1996, as given in the EnergyPlus Engineering Reference (published), solved for any start (computed).
 */
export function coilWaterAfterFan(
  storeLb: number,
  fullLb: number,
  firstLbPerH: number,
  hours: number,
): number {
  const left = Math.sqrt(storeLb / fullLb) - (firstLbPerH * hours) / (2 * fullLb);
  return left > 0 ? fullLb * left * left : 0;
}

/**
 * Mean capacity over a step after a start, as a share of the steady one, where capacity rises as `1 − exp(−t/τ)`.
 *
 * @param startLeft - `exp(−t/τ)` as the step begins, 0 to 1.
 * @param endLeft - The same as it ends, 0 to 1.
 * @param stepOverTau - Step over time constant, more than 0.
 * @returns Share, 0 to 1.
 * @see Mean of `1 − exp(−t/τ)` (computed).
 */
export function meanStartShare(startLeft: number, endLeft: number, stepOverTau: number): number {
  return 1 - (startLeft - endLeft) / stepOverTau;
}

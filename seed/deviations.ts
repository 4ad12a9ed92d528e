import { seededChance } from "@/lib/engineering/simulation/seeded-draws";

/** Small deviations around zero, evenly spread over ± `size`, the same for the same seed. */
export function deviations(seed: number): (size: number) => number {
  const next = seededChance(seed);
  return (size) => (2 * next() - 1) * size;
}

/** Rounds to a number of decimals, as an instrument shows it. */
export function shown(value: number, decimals: number): number {
  return Number(value.toFixed(decimals));
}

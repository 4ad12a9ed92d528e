import { seededChance } from "@/lib/engineering/simulation/seeded-draws";
import type { UncertainInput } from "@/lib/engineering/startup";

const SEED = 20_261_125;

/**
 * Standard deviation of `fn` over many draws of its inputs (JCGM 101:2008): an independent way to the combined
 * uncertainty. Errors are rectangular; those of one instrument share their systematic part.
 */
export function simulatedStandardUncertainty<N extends string>(
  fn: (values: Readonly<Record<N, number>>) => number,
  inputs: Readonly<Record<N, UncertainInput>>,
  draws: number,
): number {
  const random = seededChance(SEED);
  /** Mean 0, standard deviation 1. */
  const rectangular = () => (2 * random() - 1) * Math.sqrt(3);
  const names = Object.keys(inputs) as N[];
  let mean = 0;
  let squares = 0;
  for (let draw = 1; draw <= draws; draw++) {
    const shared = new Map<string, number>();
    const entries = names.map((name) => {
      const { value, standardUncertainty, instrumentId, systematicShare = 1 } = inputs[name];
      if (instrumentId === null) return [name, value + standardUncertainty * rectangular()] as const;
      const common = shared.get(instrumentId) ?? rectangular();
      shared.set(instrumentId, common);
      const own = Math.sqrt(1 - systematicShare ** 2) * rectangular();
      return [name, value + standardUncertainty * (systematicShare * common + own)] as const;
    });
    const result = fn(Object.fromEntries(entries) as Record<N, number>);
    const step = result - mean;
    mean += step / draw;
    squares += step * (result - mean);
  }
  return Math.sqrt(squares / (draws - 1));
}

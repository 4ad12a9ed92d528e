import { type Range, roundedDown, verdictOnMeasured } from "@/lib/engineering/airflow";
import { COVERAGE_FACTOR, type UncertainValue } from "./with-uncertainty";

/** What would turn "can't tell" into a verdict, if the value stays the same. */
export type Deciding<N extends string = string> =
  | {
      readonly kind: "one reading";
      readonly input: N;
      /** Accuracy ± (rectangular) that reading needs, in its own unit, rounded down. */
      readonly accuracy: number;
      readonly accuracyText: string;
    }
  | {
      readonly kind: "several readings";
      /** Inputs by what they add to the uncertainty, largest first. */
      readonly inputs: readonly N[];
      /** How many times smaller the whole uncertainty would have to be. */
      readonly times: number;
    }
  | { readonly kind: "nothing" };

/**
 * Which reading, taken with a better instrument of its own, would decide, and how good that instrument must be.
 * Of all readings that could, the one that needs the least improvement is named.
 *
 * @param result - The value with its budget.
 * @param range - The limits it is judged by, same unit.
 * @returns The reading with its accuracy; several readings when none suffices alone; nothing when the value lies on the limit.
 * @see JCGM 100:2008, 5.1.2 solved for one input: k²(c²u² + rest²) = distance² to the limit; u = a/√3 (4.3.7) (recalled).
 */
export function decidingReading<N extends string>(result: UncertainValue<N>, range: Range): Deciding<N> {
  const distances = [range.min, range.max].flatMap((limit) =>
    limit === null ? [] : [Math.abs(result.value - limit)],
  );
  if (distances.length === 0) return { kind: "nothing" };
  const passes = verdictOnMeasured({ value: result.value, uncertainty: 0 }, range, 0) === "meets";
  // The limit itself passes, so a failing interval must end just short of it.
  const distance = Math.min(...distances) * (passes ? 1 : 1 - 1e-9);
  const target = distance / COVERAGE_FACTOR;
  let best: { readonly input: N; readonly improvement: number; readonly accuracy: number } | null = null;
  for (const { input, sensitivity, standardUncertainty, withoutIt } of result.budget) {
    const room = target ** 2 - withoutIt ** 2;
    if (!(room > 0) || sensitivity === 0) continue;
    const needed = Math.sqrt(room) / Math.abs(sensitivity);
    const improvement = needed / standardUncertainty;
    if (best === null || improvement > best.improvement)
      best = { input, improvement, accuracy: needed * Math.sqrt(3) };
  }
  const rounded = best === null ? null : roundedDown(best.accuracy);
  if (best !== null && rounded !== null) {
    return {
      kind: "one reading",
      input: best.input,
      accuracy: rounded.value,
      accuracyText: rounded.text,
    };
  }
  const times = result.standardUncertainty / target;
  // Beyond a hundredfold no field instrument will do.
  if (!(times > 0 && times <= 100)) return { kind: "nothing" };
  return {
    kind: "several readings",
    inputs: result.budget.toSorted((a, b) => contribution(b) - contribution(a)).map((share) => share.input),
    times,
  };
}

function contribution(share: { readonly sensitivity: number; readonly standardUncertainty: number }): number {
  return Math.abs(share.sensitivity) * share.standardUncertainty;
}

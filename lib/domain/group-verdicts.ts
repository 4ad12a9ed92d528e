import type { ComparedGroup } from "./across-jobs";

export type VerdictCount = {
  readonly value: string | null;
  readonly verdict: string | null;
  readonly jobs: number;
};

export type GroupVerdicts = {
  readonly name: string;
  readonly jobs: number;
  /** Jobs by verdict; those without one are left over. */
  readonly counts: Readonly<Record<string, number>>;
};

/** The verdicts of each group, as listed. People with too few jobs for a share get no picture either. */
export function groupVerdicts(
  groups: readonly ComparedGroup[],
  found: readonly VerdictCount[],
): readonly GroupVerdicts[] {
  return groups
    .filter(({ share }) => share !== null)
    .map(({ value, name, jobs }) => ({
      name,
      jobs,
      counts: Object.fromEntries(
        found.flatMap((one) =>
          one.value === value && one.verdict !== null ? [[one.verdict, one.jobs]] : [],
        ),
      ),
    }));
}

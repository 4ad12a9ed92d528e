/** What jobs can be compared by. People are listed by name and judged only with enough jobs. */
export const COMPARED = {
  equipmentModelId: { label: "Equipment", people: false },
  capacitySetting: { label: "Capacity setting", people: false },
  firstStageAirflowSetting: { label: "First-stage airflow setting", people: false },
  secondStageAirflowSetting: { label: "Second-stage airflow setting", people: false },
  fanRunOnSeconds: { label: "Fan run-on, seconds", people: false },
  fanBetweenCalls: { label: "Fan between calls", people: false },
  startupMonth: { label: "Month of startup", people: false },
  techId: { label: "Who signed the startup", people: true },
} as const satisfies Readonly<Record<string, { readonly label: string; readonly people: boolean }>>;
export type ComparedBy = keyof typeof COMPARED;
export const COMPARED_KEYS = Object.keys(COMPARED) as readonly ComparedBy[];

/**
 * With fewer jobs nobody's share of complaints is shown. At ten jobs the 95 % interval is still about 50 points
 * wide, so any order of people below that would be chance (arithmetic on {@link wilson95}; the number itself is
 * common practice, no source).
 */
export const LEAST_JOBS_OF_A_PERSON = 10;

/** The two-sided 95 % point of the normal distribution. */
const Z95 = 1.959964;

export type Share = { readonly share: number; readonly low: number; readonly high: number };

/**
 * A share of jobs with its 95 % interval, after Wilson.
 *
 * @param hits - Jobs with the complaint, 0 to `jobs`.
 * @param jobs - Jobs counted, 1 or more.
 * @returns Shares, 0 to 1.
 * @throws {RangeError} outside those ranges.
 * @see Wilson, J. Am. Stat. Assoc. 22 (1927) 209; Newcombe, Statist. Med. 17 (1998) 857, method 3 (from memory).
 */
export function wilson95(hits: number, jobs: number): Share {
  if (!(Number.isInteger(jobs) && jobs >= 1 && Number.isInteger(hits) && hits >= 0 && hits <= jobs)) {
    throw new RangeError("A share needs whole counts: at least one job, and no more hits than jobs.");
  }
  const share = hits / jobs;
  const z2 = Z95 * Z95;
  const middle = (hits + z2 / 2) / (jobs + z2);
  const half = (Z95 / (jobs + z2)) * Math.sqrt(jobs * share * (1 - share) + z2 / 4);
  // At the ends the limit is exact; rounding in the last digit must not show as -0.0 or above 1.
  return { share, low: hits === 0 ? 0 : middle - half, high: hits === jobs ? 1 : middle + half };
}

export type ComparedGroup = {
  /** `null`: not recorded. */
  readonly value: string | null;
  readonly name: string;
  readonly jobs: number;
  readonly complaints: number;
  /** `null` where too few jobs of one person are known. */
  readonly share: Share | null;
};

/** Groups with their intervals: people by name, everything else by how surely complaints are common. */
export function compared(
  by: ComparedBy,
  groups: readonly Omit<ComparedGroup, "share">[],
): readonly ComparedGroup[] {
  const { people } = COMPARED[by];
  const withShare = groups.map((group) => ({
    ...group,
    share: people && group.jobs < LEAST_JOBS_OF_A_PERSON ? null : wilson95(group.complaints, group.jobs),
  }));
  return withShare.toSorted((one, other) =>
    people
      ? one.name.localeCompare(other.name)
      : (other.share?.low ?? 0) - (one.share?.low ?? 0) || one.name.localeCompare(other.name),
  );
}

/** From this many complaints on it is said in words that all of them share one value; fewer may be chance. */
const LEAST_COMPLAINTS_SAID = 3;

/** What the comparison says, in a sentence. */
export function comparisonInWords(by: ComparedBy, groups: readonly ComparedGroup[]): string {
  const total = groups.reduce((sum, group) => sum + group.complaints, 0);
  const jobs = groups.reduce((sum, group) => sum + group.jobs, 0);
  if (total === 0) return `No humidity complaint on ${jobs} jobs with a signed startup.`;
  const holding = groups.filter((group) => group.complaints > 0);
  const only = holding[0];
  const { label, people } = COMPARED[by];
  if (only && holding.length === 1 && !people && total >= LEAST_COMPLAINTS_SAID) {
    return `All ${total} jobs with a humidity complaint have the same ${label.toLowerCase()}: ${only.name}. ${only.jobs - total} other jobs have it too; ${jobs - only.jobs} jobs without it have no humidity complaint.`;
  }
  return `${total} of ${jobs} jobs with a signed startup have a humidity complaint, spread over ${holding.length} of ${groups.length} groups.`;
}

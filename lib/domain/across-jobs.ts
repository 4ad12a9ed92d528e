import { chanceOfAsMany, type Difference, type Share, shareDifference, wilson95 } from "./shares";

/**
 * What jobs can be compared by. `setting`: the company can choose it, so it is looked at for what goes with
 * complaints; `people`: listed by name and judged only with enough jobs.
 */
export const COMPARED = {
  secondStageAirflowSetting: { label: "Second-stage airflow setting", kind: "setting" },
  firstStageAirflowSetting: { label: "First-stage airflow setting", kind: "setting" },
  secondStageCfmPerTon: { label: "Second-stage cfm per ton", kind: "setting" },
  firstStageCfmPerTon: { label: "First-stage cfm per ton", kind: "setting" },
  capacitySetting: { label: "Capacity setting", kind: "setting" },
  fanRunOnSeconds: { label: "Fan run-on, seconds", kind: "setting" },
  fanBetweenCalls: { label: "Fan between calls", kind: "setting" },
  secondStageStartOffsetF: { label: "Second-stage start offset, °F", kind: "setting" },
  stepBackToFirstStage: { label: "Step back to first stage", kind: "setting" },
  equipment: { label: "Equipment", kind: "fact" },
  controlModelId: { label: "Thermostat", kind: "fact" },
  externalStaticInWc: { label: "External static, in. w.c.", kind: "fact" },
  verdict: { label: "Verdict", kind: "fact" },
  builder: { label: "Builder", kind: "fact" },
  season: { label: "Season of startup", kind: "fact" },
  startupMonth: { label: "Month of startup", kind: "fact" },
  techId: { label: "Who signed the startup", kind: "people" },
} as const satisfies Readonly<
  Record<string, { readonly label: string; readonly kind: "setting" | "fact" | "people" }>
>;
export type ComparedBy = keyof typeof COMPARED;
export const COMPARED_KEYS = Object.keys(COMPARED) as readonly ComparedBy[];
export const SETTINGS_LOOKED_AT = COMPARED_KEYS.filter((key) => COMPARED[key].kind === "setting");

/** What is counted: each a yes or no of a job. */
export const OUTCOMES_COUNTED = {
  humidity: { label: "Humidity complaint", of: "a humidity complaint" },
  callback: { label: "Any callback", of: "a callback" },
  shortfall: { label: "Startup falls short", of: "a startup that falls short" },
  wet: { label: "Humidity review falls short", of: "a humidity review that falls short" },
} as const;
export type OutcomeCounted = keyof typeof OUTCOMES_COUNTED;
export const OUTCOME_COUNTED_KEYS = Object.keys(OUTCOMES_COUNTED) as readonly OutcomeCounted[];

/** What can be drawn as a distribution beside the counts. */
export const MEASURES = {
  shareAboveLimitPct: { label: "Hours above the humidity limit", unit: "%", decimals: 1 },
  shareBetween50And60Pct: { label: "Hours between 50 and 60 %", unit: "%", decimals: 1 },
  meanIndoorDewPointF: { label: "Mean indoor dew point", unit: "°F", decimals: 1 },
  livedDryHours: { label: "Dry-hours in the log", unit: "h", decimals: 0 },
  firstStageCfmPerTon: { label: "First-stage cfm per ton", unit: "cfm/ton", decimals: 0 },
  secondStageCfmPerTon: { label: "Second-stage cfm per ton", unit: "cfm/ton", decimals: 0 },
  externalStaticInWc: { label: "External static", unit: "in. w.c.", decimals: 2 },
  sensibleRatio: { label: "Sensible ratio", unit: "", decimals: 2 },
  moistureRemovalLbPerH: { label: "Moisture removal", unit: "lb/h", decimals: 1 },
  sizeRatio: { label: "Capacity over load", unit: "", decimals: 2 },
  measuredSizeRatio: { label: "Measured capacity over measured load", unit: "", decimals: 2 },
  cyclesPerHour: { label: "Cycles per hour", unit: "/h", decimals: 1 },
  secondStageSharePct: { label: "Second-stage share of run time", unit: "%", decimals: 0 },
} as const satisfies Readonly<
  Record<string, { readonly label: string; readonly unit: string; readonly decimals: number }>
>;
export type Measure = keyof typeof MEASURES;
export const MEASURE_KEYS = Object.keys(MEASURES) as readonly Measure[];

/**
 * With fewer jobs nobody's share of complaints is shown. At ten jobs the 95 % interval is still about 50 points
 * wide, so any order of people below that would be chance (arithmetic on {@link wilson95}; the number itself is
 * common practice, no source).
 */
export const LEAST_JOBS_OF_A_PERSON = 10;

export type CountedGroup = {
  /** `null`: not recorded. */
  readonly value: string | null;
  readonly name: string;
  readonly jobs: number;
  /** Jobs with the outcome that is counted. */
  readonly complaints: number;
};

export type ComparedGroup = CountedGroup & {
  /** `null` where too few jobs of one person are known. */
  readonly share: Share | null;
};

/** Groups with their intervals: people by name, everything else by how surely complaints are common. */
export function compared(by: ComparedBy, groups: readonly CountedGroup[]): readonly ComparedGroup[] {
  const people = COMPARED[by].kind === "people";
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

/** One setting's value that stands out, against all jobs with another value of it. */
export type Contrast = {
  readonly by: ComparedBy;
  readonly group: CountedGroup;
  readonly rest: { readonly jobs: number; readonly complaints: number };
  readonly difference: Difference;
  /** How likely chance would bring about as much somewhere among all values looked at, 0 to 1. */
  readonly chance: number;
};

/** Below this chance a contrast is called more than chance: the usual one in twenty. */
export const CHANCE_LIMIT = 0.05;

/**
 * For each setting the value that holds most more complaints than chance would give it, least chance first.
 * Jobs on which the setting is not recorded are left out of it; a setting with one value says nothing. Chances are
 * multiplied by the number of values looked at (Bonferroni), so that the best of many is not taken for a law.
 */
export function contrasts(
  counted: Readonly<Partial<Record<ComparedBy, readonly CountedGroup[]>>>,
): readonly Contrast[] {
  const settings = SETTINGS_LOOKED_AT.filter((by) => recorded(counted[by]).length > 1);
  const looks = settings.reduce((total, by) => total + recorded(counted[by]).length, 0);
  return settings
    .flatMap((by) => {
      const groups = recorded(counted[by]);
      const jobs = sum(groups, (group) => group.jobs);
      const complaints = sum(groups, (group) => group.complaints);
      const against = groups.map((group): Contrast => {
        const rest = { jobs: jobs - group.jobs, complaints: complaints - group.complaints };
        const [one, other] = [[group.complaints, group.jobs] as const, [rest.complaints, rest.jobs] as const];
        return {
          by,
          group,
          rest,
          difference: shareDifference(one, other),
          chance: Math.min(1, looks * chanceOfAsMany(one, other)),
        };
      });
      return against.toSorted(byChance).slice(0, 1);
    })
    .filter(({ group, difference }) => group.complaints > 0 && difference.difference > 0)
    .toSorted(byChance);
}

const byChance = (one: Contrast, other: Contrast) =>
  one.chance - other.chance || other.difference.low - one.difference.low;
const recorded = (groups: readonly CountedGroup[] = []) => groups.filter(({ value }) => value !== null);

function sum(groups: readonly CountedGroup[], of: (group: CountedGroup) => number): number {
  return groups.reduce((total, group) => total + of(group), 0);
}

/** A job behind one line of a comparison. */
export type JobOfGroup = {
  readonly jobId: string;
  readonly number: number;
  readonly customerName: string;
  readonly humidityComplaints: number;
  readonly callbacks: number;
  readonly verdict: string | null;
  readonly measure: number | null;
};

/** From this many complaints on it is said in words that all of them share one value; fewer may be chance. */
const LEAST_COMPLAINTS_SAID = 3;

/** What chance has to do with it, for one setting looked at alone. */
function chanceInWords(chance: number): string {
  const times = Math.round(1 / chance).toLocaleString("en-US");
  return chance < CHANCE_LIMIT
    ? `By chance alone they would all be there 1 time in ${times}.`
    : `That may be chance: it would come about ${chance > 0.67 ? "as often as not" : `1 time in ${times}`}.`;
}

/** What the comparison says, in a sentence. */
export function comparisonInWords(
  by: ComparedBy,
  groups: readonly CountedGroup[],
  outcome: OutcomeCounted = "humidity",
): string {
  const total = sum(groups, (group) => group.complaints);
  const jobs = sum(groups, (group) => group.jobs);
  const { of } = OUTCOMES_COUNTED[outcome];
  if (total === 0) return `None of ${jobs} jobs with a signed startup has ${of}.`;
  const holding = groups.filter((group) => group.complaints > 0);
  const only = holding[0];
  const { label, kind } = COMPARED[by];
  // Jobs on which it is not recorded share nothing, and tell nothing of those without it.
  const rest = sum(recorded(groups), (group) => group.jobs) - (only?.jobs ?? 0);
  const isShared = holding.length === 1 && only !== undefined && only.value !== null && rest > 0;
  if (isShared && kind !== "people" && total >= LEAST_COMPLAINTS_SAID) {
    const others = only.jobs - total;
    const chance = chanceOfAsMany([total, only.jobs], [0, rest]);
    return `All ${total} jobs with ${of} have the same ${label.toLowerCase()}: ${only.name}. ${others} other ${others === 1 ? "job has" : "jobs have"} it too; ${rest} ${rest === 1 ? "job" : "jobs"} without it ${rest === 1 ? "has" : "have"} none. ${chanceInWords(chance)}`;
  }
  return `${total} of ${jobs} jobs with a signed startup have ${of}, spread over ${holding.length} of ${groups.length} groups.`;
}

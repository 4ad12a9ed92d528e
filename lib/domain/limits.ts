import { airflowLimits } from "@/lib/engineering/airflow/limits";
import { controlsLimits } from "@/lib/engineering/controls/limits";
import { equipmentLimits } from "@/lib/engineering/equipment/limits";
import { ImpossibleStateError } from "@/lib/engineering/errors";
import type { LimitDefinition, LimitValues } from "@/lib/engineering/limit-definition";
import { loadLimits } from "@/lib/engineering/load/limits";
import { logsLimits } from "@/lib/engineering/logs/limits";
import { moistureLimits } from "@/lib/engineering/moisture/limits";
import { refrigerantLimits } from "@/lib/engineering/refrigerant/limits";
import { simulationLimits } from "@/lib/engineering/simulation/limits";
import { startupLimits } from "@/lib/engineering/startup/limits";
import type { FieldProblem } from "./problems";

/** Every number a company may set, of every engineering folder. A key begins with its folder's name. */
export const LIMITS = {
  ...loadLimits,
  ...airflowLimits,
  ...equipmentLimits,
  ...refrigerantLimits,
  ...controlsLimits,
  ...moistureLimits,
  ...startupLimits,
  ...simulationLimits,
  ...logsLimits,
} as const satisfies Readonly<Record<string, LimitDefinition>>;

export type LimitKey = keyof typeof LIMITS;
/** One number for every limit: what the findings functions read. */
export type Limits = LimitValues<typeof LIMITS>;

export const LIMIT_KEYS = Object.keys(LIMITS) as readonly LimitKey[];

export function isLimitKey(key: string): key is LimitKey {
  return Object.hasOwn(LIMITS, key);
}

/** The definition under a key, by the one shape all definitions share. */
export function limitDefinition(key: LimitKey): LimitDefinition {
  return LIMITS[key];
}

/**
 * What is wrong with values a company has set: a key no rule knows, or a number outside its limit's
 * range. Empty when all of them can be used.
 */
export function limitProblems(overrides: Readonly<Record<string, number>>): readonly FieldProblem[] {
  return Object.entries(overrides).flatMap(([key, value]) => {
    if (!isLimitKey(key)) {
      return [{ field: key, message: `No rule reads a limit named ${key}. Remove it.` }];
    }
    const { title, unit, min, max } = limitDefinition(key);
    const suffix = unit === "" ? "" : ` ${unit}`;
    if (value >= min && value <= max) return [];
    return [
      {
        field: key,
        message: `${title}: ${value}${suffix} is not from ${min} to ${max}${suffix}. Change it.`,
      },
    ];
  });
}

/**
 * The limits that count for one company: what it has set, and the seed value of the rest.
 *
 * A stored value that cannot be used stops here instead of giving way to the seed: a verdict judged by
 * another limit than the one the company wrote down would be wrong without a word. Values are checked
 * when they are set, so this happens only after a release has narrowed a range or renamed a limit; the
 * rules page still opens then (it asks `limitProblems`) and shows the owner what to mend.
 *
 * @throws {@link ImpossibleStateError} naming every limit that cannot be used and why.
 */
export function limitsInForce(overrides: Readonly<Record<string, number>>): Limits {
  const problems = limitProblems(overrides);
  if (problems.length > 0) {
    const why = problems.map((problem) => problem.message).join(" ");
    throw new ImpossibleStateError(
      `The company's limits cannot be used. ${why} The owner can mend this under Rules.`,
      problems.map((problem) => problem.field),
    );
  }
  const entries = LIMIT_KEYS.map((key) => [key, overrides[key] ?? limitDefinition(key).seed]);
  return Object.fromEntries(entries) as Limits;
}

import type { airflowLimits } from "@/lib/engineering/airflow";
import type { refrigerantLimits } from "@/lib/engineering/refrigerant";
import { isEngineeringError } from "../errors";
import { type Finding, finding, type Rule } from "../findings";
import type { LimitValues } from "../limit-definition";
import { type DeliveredCapacity, deliveredCapacity } from "./delivered-capacity";
import type { startupLimits } from "./limits";
import { missingReadings, READINGS, type ReadingName } from "./readings";
import type { StartupSite, StartupStage } from "./startup-stage";

/** A startup also judges airflow and charge, so it reads their limits. */
export type StartupLimitValues = LimitValues<typeof startupLimits> &
  LimitValues<typeof airflowLimits> &
  LimitValues<typeof refrigerantLimits>;

/** What every check of one stage gets. */
export type StageCheck = {
  readonly values: StartupStage;
  readonly site: StartupSite;
  /** Such as `stages.0.`. */
  readonly fieldPrefix: string;
  readonly limits: StartupLimitValues;
  /** Delivered capacity of this stage, computed once; throws what {@link deliveredCapacity} throws. */
  readonly getDelivered: () => DeliveredCapacity;
};

/** Names used by the airflow and refrigerant folders for what a startup calls otherwise. */
const ALIASES: Readonly<Record<string, string>> = {
  airflow: "airflowCfm",
  externalStatic: "externalStaticInWc",
  fanPower: "fanPowerW",
  sitePressurePsia: "elevationFt",
};
const SITE_FIELDS: readonly string[] = ["elevationFt", "refrigerant", "meteringDevice", "measuredOn"];

/**
 * One stage made ready for its checks.
 *
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} for inputs that cannot be, naming the field.
 */
export function stageCheck(
  values: StartupStage,
  site: StartupSite,
  fieldPrefix: string,
  limits: StartupLimitValues,
): StageCheck {
  let delivered = values.delivered ?? null;
  const getDelivered = () => {
    delivered ??= deliveredCapacity({
      elevationFt: site.elevationFt ?? Number.NaN,
      readings: values.readings,
      systematicShare: limits["startup.systematicShare"],
    });
    return delivered;
  };
  return { values, site, fieldPrefix, limits, getDelivered };
}

/** Whether the stage ran long enough to be judged. Not said means no. */
export function isSteady({ values, limits }: StageCheck): boolean {
  return (values.steadyMinutes ?? 0) >= limits["refrigerant.stabilizeMinutes"];
}

/** The full names of the fields a check used or misses. */
export function fieldNames(check: StageCheck, names: readonly string[]): readonly string[] {
  return names.map((given) => {
    const name = ALIASES[given] ?? given;
    if (SITE_FIELDS.includes(name)) return name;
    return name in READINGS ? `${check.fieldPrefix}readings.${name}` : `${check.fieldPrefix}${name}`;
  });
}

/** Full names of the readings and other values that a check needs and that are `null`. */
export function missingNames(
  check: StageCheck,
  readings: readonly ReadingName[],
  others: Readonly<Record<string, unknown>> = {},
): readonly string[] {
  return fieldNames(check, [
    ...missingReadings(check.values.readings, readings),
    ...Object.entries(others).flatMap(([name, value]) => (value === null ? [name] : [])),
  ]);
}

/**
 * Readings that are each plausible but contradict each other make a finding that says so, and leave the rest of the stage
 * standing.
 *
 * @throws anything that is not a refusal of the engineering module.
 */
export function guarded(
  check: StageCheck,
  rule: Rule,
  inputs: readonly string[],
  make: () => Finding,
): Finding {
  try {
    return make();
  } catch (error) {
    if (!isEngineeringError(error)) throw error;
    return finding(rule, {
      verdict: "can't tell",
      statement: `${check.values.stage}: these readings cannot be used: ${error.message}`,
      nextStep: "Check these readings and take them again.",
      inputs: fieldNames(check, inputs),
    });
  }
}

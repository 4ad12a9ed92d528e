import { type Finding, finding, notMeasured } from "../findings";
import { airflowAgainstDesign, airflowPerTon, fanPowerPerAirflow } from "./airflow-checks";
import type { AirflowLimitValues } from "./check-input";
import {
  airflowAgainstElectricHeatMinimum,
  airflowAgainstMakersMinimum,
  coilAboveFrost,
} from "./low-airflow-guards";
import type { Measured } from "./measured";
import { airflowRules } from "./rules";
import { missing, numberText } from "./sentences";
import { frictionRate } from "./static-budget";
import { staticAgainstDesign, staticAgainstMaximum } from "./static-checks";

/** Airflow setup of one stage. `null`: not given. */
export type AirflowStage = {
  /** Its name in a sentence, such as "First stage". */
  readonly stage: string;
  readonly airflow: Measured | null;
  readonly designCfm: number | null;
  readonly capacityAsSetBtuh: number | null;
  readonly leavingDewPointF: number | null;
  readonly coilTemperature: Measured | null;
  readonly makersMinimumCfm: number | null;
  readonly externalStatic: Measured | null;
  readonly designStaticInWc: number | null;
  readonly maximumStaticInWc: number | null;
  readonly fanPower: Measured | null;
};

export type AirflowInput = {
  readonly stages: readonly AirflowStage[];
  /** What the design leaves the ducts; `null` when this job has no duct design. */
  readonly ducts: {
    readonly availableInWc: number | null;
    readonly totalEffectiveLengthFt: number | null;
  } | null;
  /** `null`: no electric heat is installed. */
  readonly electricHeat: {
    readonly airflow: Measured | null;
    readonly electricHeatMinimumCfm: number | null;
  } | null;
};

/**
 * Everything airflow setup says, stage by stage.
 *
 * @param input - Readings in cfm, in. w.c., W, °F, Btu/h; ranges at the single checks.
 * @param limits - The company's limits in force.
 * @returns One finding a rule and stage, in a fixed order.
 * @throws {@link OutOfRangeError} naming the field that is out of range.
 * @see ANSI/RESNET/ICC 310 and ANSI/ACCA 5 QI-2015 (recalled); each rule of this folder names its own.
 */
export function airflowFindings(input: AirflowInput, limits: AirflowLimitValues): readonly Finding[] {
  const byStage = input.stages.flatMap((values, index) => {
    const stage = { ...values, fieldPrefix: `stages.${index}.` };
    return [
      airflowAgainstDesign(stage, limits),
      airflowPerTon(stage, limits),
      airflowAgainstMakersMinimum(stage, limits),
      coilAboveFrost(stage, limits),
      staticAgainstMaximum(stage, limits),
      staticAgainstDesign(stage, limits),
      fanPowerPerAirflow(stage, limits),
    ];
  });
  const ducts = input.ducts === null ? [] : [frictionRateFinding(input.ducts, limits)];
  const electricHeat =
    input.electricHeat === null
      ? []
      : [
          airflowAgainstElectricHeatMinimum(
            { ...input.electricHeat, stage: "Electric heat", fieldPrefix: "electricHeat." },
            limits,
          ),
        ];
  return [...byStage, ...ducts, ...electricHeat];
}

function frictionRateFinding(ducts: NonNullable<AirflowInput["ducts"]>, limits: AirflowLimitValues): Finding {
  const { availableInWc, totalEffectiveLengthFt } = ducts;
  const rule = airflowRules.frictionRate;
  if (availableInWc === null || totalEffectiveLengthFt === null) {
    return notMeasured(
      rule,
      missing("ducts.", { availableInWc, totalEffectiveLengthFt }),
      "Enter the static pressure left for the ducts and the total effective length.",
    );
  }
  const min = limits["airflow.frictionRateMin"];
  const max = limits["airflow.frictionRateMax"];
  // Nothing left for the ducts is a result of the budget, not a typing error.
  const rate =
    availableInWc < 0 && availableInWc >= -5 ? null : frictionRate(availableInWc, totalEffectiveLengthFt);
  const inputs = ["ducts.availableInWc", "ducts.totalEffectiveLengthFt"];
  if (rate === null) {
    return finding(rule, {
      verdict: "falls short",
      statement: `Filter, coil and other devices take ${numberText(-availableInWc, 2)} in. w.c. more than the fan gives: nothing is left for the ducts.`,
      nextStep: "Choose a filter or coil with less drop, or a fan with more static.",
      inputs,
    });
  }
  return finding(rule, {
    verdict: rate >= min && rate <= max ? "meets" : "falls short",
    statement: `${numberText(availableInWc, 2)} in. w.c. over ${numberText(totalEffectiveLengthFt, 0)} ft of total effective length is a friction rate of ${numberText(rate, 3)}; ${numberText(min, 2)} to ${numberText(max, 2)} in. w.c. per 100 ft is usable.`,
    figures: [{ label: "Friction rate", value: rate, unit: "in. w.c. per 100 ft", decimals: 3 }],
    nextStep:
      rate < min
        ? "Shorten the longest run, use fittings with less loss, or free static pressure at filter and coil."
        : rate > max
          ? "Airflow will exceed design at this setting: choose a lower fan setting or smaller ducts within the velocity limit."
          : null,
    inputs,
  });
}

import type { Rule } from "../findings";
import { type Finding, finding, notMeasured } from "../findings";
import { requireRange } from "../units";
import type { AirflowLimitValues, StageName } from "./check-input";
import { type Measured, requireMeasured, verdictOnMeasured } from "./measured";
import { airflowRules } from "./rules";
import { measuredFigure, measuredText, missing, nextStepFor, numberText, settledBy } from "./sentences";

const ELECTRIC_HEAT_CAUTION =
  "Electric heat with too little air overheats. Do not bypass its limit switch; the maker's instructions, local codes and licensed practice govern.";

/**
 * Measured airflow against the maker's minimum for this stage.
 *
 * @param input.airflow - Measured airflow, cfm. 0 to 20,000.
 * @param input.makersMinimumCfm - The maker's minimum, cfm. 50 to 20,000.
 * @param limits - Limits in force; ranges at `airflowLimits`.
 * @returns `meets` at or above the minimum, cfm.
 * @throws {@link OutOfRangeError} naming the field.
 * @see The maker's minimum airflow of the indoor unit (maker's data).
 */
export function airflowAgainstMakersMinimum(
  input: StageName & { readonly airflow: Measured | null; readonly makersMinimumCfm: number | null },
  limits: AirflowLimitValues,
): Finding {
  return againstMinimum(airflowRules.makersMinimum, {
    ...input,
    minimumCfm: input.makersMinimumCfm,
    minimumName: "makersMinimumCfm",
    minimumText: "the maker's minimum",
    caution: null,
    limits,
  });
}

/**
 * Airflow with electric heat on against the minimum its maker asks for.
 *
 * @param input.airflow - Measured airflow with the heat on, cfm. 0 to 20,000.
 * @param input.electricHeatMinimumCfm - The maker's minimum for this heater size, cfm. 50 to 20,000.
 * @param limits - Limits in force; ranges at `airflowLimits`.
 * @returns `meets` at or above the minimum, cfm.
 * @throws {@link OutOfRangeError} naming the field.
 * @see The maker's minimum airflow of the heater (maker's data).
 */
export function airflowAgainstElectricHeatMinimum(
  input: StageName & {
    readonly airflow: Measured | null;
    readonly electricHeatMinimumCfm: number | null;
  },
  limits: AirflowLimitValues,
): Finding {
  return againstMinimum(airflowRules.electricHeatMinimum, {
    ...input,
    minimumCfm: input.electricHeatMinimumCfm,
    minimumName: "electricHeatMinimumCfm",
    minimumText: "the minimum for the electric heat",
    caution: ELECTRIC_HEAT_CAUTION,
    limits,
  });
}

/**
 * Coldest coil surface against frost.
 *
 * @param input.coilTemperature - Coldest coil surface, measured, computed or held by the compressor, °F. −40 to 100.
 * @param limits - Limits in force; ranges at `airflowLimits`.
 * @returns `meets` when the surface stays above the frost limit, °F.
 * @throws {@link OutOfRangeError} naming the field.
 * @see Water freezes at 32 °F (physics).
 */
export function coilAboveFrost(
  input: StageName & { readonly coilTemperature: Measured | null },
  limits: AirflowLimitValues,
): Finding {
  const { coilTemperature, fieldPrefix } = input;
  const rule = airflowRules.coilFrost;
  requireMeasured(`${fieldPrefix}coilTemperature`, coilTemperature, "°F", -40, 100);
  if (coilTemperature === null) {
    return notMeasured(
      rule,
      [`${fieldPrefix}coilTemperature`],
      `Enter the coil temperature of ${input.stage}: suction saturation at the coil, or the temperature the compressor holds.`,
    );
  }
  const range = { min: limits["airflow.coilFrostF"], max: null };
  const verdict = verdictOnMeasured(coilTemperature, range, limits["airflow.unknownAccuracyBandPct"]);
  return finding(rule, {
    verdict,
    statement: `${input.stage}: the coil is at ${measuredText(coilTemperature, "°F", 1)}; frost begins below ${numberText(range.min, 0)} °F.`,
    figures: [measuredFigure("Coil temperature", coilTemperature, "°F", 1)],
    nextStep: nextStepFor(verdict, {
      fallsShort:
        "Raise the airflow or the coil temperature setting of this stage, and check filter and charge.",
      cantTell: settledBy(coilTemperature, range, 1, "°F", "A coil temperature"),
    }),
    inputs: [`${fieldPrefix}coilTemperature`],
  });
}

function againstMinimum(
  rule: Rule,
  input: StageName & {
    readonly airflow: Measured | null;
    readonly minimumCfm: number | null;
    readonly minimumName: string;
    readonly minimumText: string;
    readonly caution: string | null;
    readonly limits: AirflowLimitValues;
  },
): Finding {
  const { airflow, minimumCfm, minimumName, fieldPrefix } = input;
  requireMeasured(`${fieldPrefix}airflow`, airflow, "cfm", 0, 20_000);
  if (minimumCfm !== null) requireRange(`${fieldPrefix}${minimumName}`, minimumCfm, "cfm", 50, 20_000);
  if (airflow === null || minimumCfm === null) {
    return notMeasured(
      rule,
      missing(fieldPrefix, { airflow, [minimumName]: minimumCfm }),
      `Measure the airflow of ${input.stage} and enter ${input.minimumText} from the maker's instructions.`,
    );
  }
  const range = { min: minimumCfm, max: null };
  const verdict = verdictOnMeasured(airflow, range, input.limits["airflow.unknownAccuracyBandPct"]);
  return finding(rule, {
    verdict,
    statement: `${input.stage}: airflow ${measuredText(airflow, "cfm", 0)} against ${input.minimumText}, ${numberText(minimumCfm, 0)} cfm.`,
    figures: [
      measuredFigure("Measured airflow", airflow, "cfm", 0),
      { label: "Minimum airflow", value: minimumCfm, unit: "cfm", decimals: 0 },
    ],
    nextStep: nextStepFor(verdict, {
      fallsShort:
        "Choose a higher airflow setting for this stage, or ease filter and ducts until the minimum is reached.",
      cantTell: settledBy(airflow, range, 1, "cfm", "An airflow measurement"),
    }),
    caution: input.caution,
    inputs: [`${fieldPrefix}airflow`, `${fieldPrefix}${minimumName}`],
  });
}

import { type Finding, finding, notMeasured } from "../findings";
import { requireRange } from "../units";
import type { AirflowLimitValues, StageName } from "./check-input";
import { type Measured, requireMeasured, verdictOnMeasured } from "./measured";
import { airflowRules } from "./rules";
import { measuredFigure, measuredText, missing, nextStepFor, numberText, settledBy } from "./sentences";

/**
 * Measured external static against the maker's maximum.
 *
 * @param input.externalStatic - Measured external static, in. w.c. 0 to 5.
 * @param input.maximumStaticInWc - The maker's maximum, in. w.c. 0.05 to 5.
 * @param limits - Limits in force; ranges at `airflowLimits`.
 * @returns `meets` at or below the maximum, in. w.c.
 * @throws {@link OutOfRangeError} naming the field.
 * @see ANSI/ACCA 5 QI-2015 (recalled).
 */
export function staticAgainstMaximum(
  input: StageName & {
    readonly externalStatic: Measured | null;
    readonly maximumStaticInWc: number | null;
  },
  limits: AirflowLimitValues,
): Finding {
  const { externalStatic, maximumStaticInWc, fieldPrefix } = input;
  const rule = airflowRules.staticAgainstMaximum;
  requireStatics(input, maximumStaticInWc, "maximumStaticInWc");
  if (externalStatic === null || maximumStaticInWc === null) {
    return notMeasured(
      rule,
      missing(fieldPrefix, { externalStatic, maximumStaticInWc }),
      `Measure the external static of ${input.stage} and enter the maker's maximum.`,
    );
  }
  const range = { min: null, max: maximumStaticInWc };
  const verdict = verdictOnMeasured(externalStatic, range, limits["airflow.unknownAccuracyBandPct"]);
  return finding(rule, {
    verdict,
    statement: `${input.stage}: external static ${measuredText(externalStatic, "in. w.c.", 2)} against the maker's maximum ${numberText(maximumStaticInWc, 2)} in. w.c.`,
    figures: [
      measuredFigure("External static", externalStatic, "in. w.c.", 2),
      { label: "Maker's maximum", value: maximumStaticInWc, unit: "in. w.c.", decimals: 2 },
    ],
    nextStep: nextStepFor(verdict, {
      fallsShort:
        "Measure the drop of filter, coil, supply and return one by one; ease the largest before raising the fan setting.",
      cantTell: settledBy(externalStatic, range, 1, "in. w.c.", "A static pressure reading"),
    }),
    inputs: [`${fieldPrefix}externalStatic`, `${fieldPrefix}maximumStaticInWc`],
  });
}

/**
 * Measured external static against design.
 *
 * @param input.externalStatic - Measured external static, in. w.c. 0 to 5.
 * @param input.designStaticInWc - Design external static, in. w.c. 0.05 to 5.
 * @param limits - Limits in force; ranges at `airflowLimits`.
 * @returns `meets` within the tolerance, in. w.c.
 * @throws {@link OutOfRangeError} naming the field.
 * @see ANSI/ACCA 5 QI-2015 (recalled): within 25 % or 0.10 in. w.c., read here as the larger of the two.
 */
export function staticAgainstDesign(
  input: StageName & {
    readonly externalStatic: Measured | null;
    readonly designStaticInWc: number | null;
  },
  limits: AirflowLimitValues,
): Finding {
  const { externalStatic, designStaticInWc, fieldPrefix } = input;
  const rule = airflowRules.staticAgainstDesign;
  requireStatics(input, designStaticInWc, "designStaticInWc");
  if (externalStatic === null || designStaticInWc === null) {
    return notMeasured(
      rule,
      missing(fieldPrefix, { externalStatic, designStaticInWc }),
      `Measure the external static of ${input.stage} and enter its design value.`,
    );
  }
  const allowed = Math.max(
    (limits["airflow.staticDesignPct"] / 100) * designStaticInWc,
    limits["airflow.staticDesignInWc"],
  );
  const range = { min: designStaticInWc - allowed, max: designStaticInWc + allowed };
  const verdict = verdictOnMeasured(externalStatic, range, limits["airflow.unknownAccuracyBandPct"]);
  return finding(rule, {
    verdict,
    statement: `${input.stage}: external static ${measuredText(externalStatic, "in. w.c.", 2)} against the design ${numberText(designStaticInWc, 2)} in. w.c.; ${numberText(allowed, 2)} in. w.c. either way is allowed.`,
    figures: [
      measuredFigure("External static", externalStatic, "in. w.c.", 2),
      { label: "Design static", value: designStaticInWc, unit: "in. w.c.", decimals: 2 },
      { label: "Allowed difference", value: allowed, unit: "in. w.c.", decimals: 2 },
    ],
    nextStep: nextStepFor(verdict, {
      fallsShort:
        externalStatic.value > designStaticInWc
          ? "Find the part of the duct system that takes more than its share of the static budget."
          : "Check that the fan runs at the setting of this stage and that no panel or duct is open.",
      cantTell: settledBy(externalStatic, range, 1, "in. w.c.", "A static pressure reading"),
    }),
    inputs: [`${fieldPrefix}externalStatic`, `${fieldPrefix}designStaticInWc`],
  });
}

function requireStatics(
  input: StageName & { readonly externalStatic: Measured | null },
  other: number | null,
  otherName: string,
): void {
  requireMeasured(`${input.fieldPrefix}externalStatic`, input.externalStatic, "in. w.c.", 0, 5);
  if (other !== null) requireRange(`${input.fieldPrefix}${otherName}`, other, "in. w.c.", 0.05, 5);
}

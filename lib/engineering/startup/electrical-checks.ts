import { nextStepFor, numberText } from "@/lib/engineering/airflow";
import { type Finding, finding, notMeasured, type Rule } from "../findings";
import { ELECTRICAL_CAUTION } from "./cautions";
import { rescaled } from "./combined-results";
import { judge, type Result, resultFigure, resultText, whatWouldSettle } from "./judged";
import { prepareReadings } from "./propagate";
import { startupRules } from "./rules";
import { fieldNames, guarded, missingNames, type StageCheck } from "./stage-check";
import { withUncertainty } from "./with-uncertainty";

/**
 * Running voltage against the nameplate.
 *
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} for inputs that cannot be, naming the field.
 */
export function voltageFinding(check: StageCheck): Finding {
  const { nameplateVolts } = check.values;
  const allowed = check.limits["startup.voltagePct"];
  return electricalShare(check, startupRules.voltage, {
    reading: "outdoorUnitVolts",
    rated: nameplateVolts,
    ratedName: "nameplateVolts",
    unit: "V",
    word: "voltage",
    ratedWord: "nameplate",
    range: { min: 1 - allowed / 100, max: 1 + allowed / 100 },
    asked: `within ${numberText(allowed, 0)} % is asked for`,
    fallsShort:
      "Check the supply under load and tell the customer's electrician or utility; do not adjust the unit to it.",
  });
}

/**
 * Running current against the rated current.
 *
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} for inputs that cannot be, naming the field.
 */
export function currentFinding(check: StageCheck): Finding {
  const { ratedAmps } = check.values;
  const allowed = check.limits["startup.ratedAmpsPct"];
  return electricalShare(check, startupRules.current, {
    reading: "outdoorUnitAmps",
    rated: ratedAmps,
    ratedName: "ratedAmps",
    unit: "A",
    word: "current",
    ratedWord: "rated",
    range: { min: null, max: allowed / 100 },
    asked: `at most ${numberText(allowed, 0)} % is allowed`,
    fallsShort: "Check voltage, outdoor coil and fan, and charge before leaving the unit running.",
  });
}

function electricalShare(
  check: StageCheck,
  rule: Rule,
  say: {
    readonly reading: "outdoorUnitVolts" | "outdoorUnitAmps";
    readonly rated: number | null;
    readonly ratedName: string;
    readonly unit: string;
    readonly word: string;
    readonly ratedWord: string;
    readonly range: { readonly min: number | null; readonly max: number };
    readonly asked: string;
    readonly fallsShort: string;
  },
): Finding {
  const { rated } = say;
  const names = [say.reading];
  const missing = missingNames(check, names, { [say.ratedName]: rated });
  if (missing.length > 0 || rated === null) {
    return notMeasured(
      rule,
      missing,
      `Read the ${say.word} of the outdoor unit while it runs and enter the ${say.ratedWord} value.`,
    );
  }
  return guarded(check, rule, names, () => {
    const prepared = prepareReadings(
      check.values.readings,
      [say.reading],
      check.limits["startup.systematicShare"],
    );
    const measured: Result = {
      result: withUncertainty((at) => at[say.reading], prepared.inputs),
      unknownAccuracy: prepared.unknownAccuracy,
    };
    const share: Result = { ...measured, result: rescaled(measured.result, 1 / rated) };
    const verdict = judge(share, say.range, check.limits["startup.unknownAccuracyBand"]);
    return finding(rule, {
      verdict,
      statement: `${check.values.stage}: ${say.word} ${resultText(measured, say.unit, 1)} is ${numberText(share.result.value, 2)} of the ${say.ratedWord} ${numberText(rated, 1)} ${say.unit}; ${say.asked}.`,
      figures: [
        resultFigure(`Running ${say.word}`, measured, say.unit, 1),
        { label: `Value by ${say.ratedWord}`, value: rated, unit: say.unit, decimals: 1 },
      ],
      nextStep: nextStepFor(verdict, {
        fallsShort: say.fallsShort,
        cantTell: whatWouldSettle(share, say.range),
      }),
      caution: ELECTRICAL_CAUTION,
      inputs: fieldNames(check, [...names, say.ratedName]),
    });
  });
}

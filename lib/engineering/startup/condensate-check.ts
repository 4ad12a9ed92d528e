import { nextStepFor, numberText } from "@/lib/engineering/airflow";
import { type Finding, finding, notMeasured } from "../findings";
import { airReadingsOf } from "./air-checks";
import { condensateComparison } from "./condensate";
import { judge, type Result, resultFigure, resultText, whatWouldSettle } from "./judged";
import { startupRules } from "./rules";
import { fieldNames, guarded, missingNames, type StageCheck } from "./stage-check";

/**
 * Water caught at the drain against the air side of this stage.
 *
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} for inputs that cannot be, naming the field.
 */
export function condensateFinding(check: StageCheck): Finding {
  const rule = startupRules.condensate;
  const { values, site, limits } = check;
  const { condensateMinutes: minutes } = values;
  const { condensateLb } = values.readings;
  const names = [...airReadingsOf(check), "condensateLb"] as const;
  const missing = missingNames(check, names, {
    condensateMinutes: minutes,
    elevationFt: site.elevationFt,
  });
  const least = limits["startup.condensateMinutes"];
  if (missing.length > 0 || minutes === null || condensateLb === null) {
    return notMeasured(
      rule,
      missing,
      `Once the drain runs steadily, catch its water for at least ${numberText(least, 0)} min and weigh it: it checks moisture removal without a wet bulb.`,
    );
  }
  const inputs = fieldNames(check, [...names, "condensateMinutes", "elevationFt"]);
  return guarded(check, rule, names, () => {
    const delivered = check.getDelivered();
    const compared = condensateComparison({
      condensateLb,
      minutes,
      moistureLbPerH: delivered.moistureLbPerH,
    });
    const caughtUnknown = condensateLb.instrument === null ? (["condensateLb"] as const) : [];
    const caught: Result = { result: compared.caughtLbPerH, unknownAccuracy: caughtUnknown };
    const airSide: Result = {
      result: compared.airSideLbPerH,
      unknownAccuracy: delivered.unknownAccuracy,
    };
    const figures = [
      resultFigure("Water caught", caught, "lb/h", 1),
      resultFigure("Air side", airSide, "lb/h", 1),
    ];
    const both = `${values.stage}: the drain gave ${resultText(caught, "lb/h", 1)}, the air side says ${resultText(airSide, "lb/h", 1)}`;
    if (compared.share === null) {
      return finding(rule, {
        verdict: "can't tell",
        statement: `${both}; that is too little to compare.`,
        figures,
        nextStep: "Compare again in moister air, with the drain running steadily.",
        inputs,
      });
    }
    if (minutes < least) {
      return finding(rule, {
        verdict: "can't tell",
        statement: `${both}; it was caught for ${numberText(minutes, 0)} min only.`,
        figures,
        nextStep: `Catch the drain water for at least ${numberText(least, 0)} min.`,
        inputs,
      });
    }
    const allowed = limits["startup.condensatePct"];
    const range = { min: (100 - allowed) / 100, max: (100 + allowed) / 100 };
    const said: Result = {
      result: compared.share,
      unknownAccuracy: [...delivered.unknownAccuracy, ...caughtUnknown],
    };
    const verdict = judge(said, range, limits["startup.unknownAccuracyBand"]);
    return finding(rule, {
      verdict,
      statement: `${both}: a ratio of ${numberText(said.result.value, 2)}; within ${numberText(allowed, 0)} % the two agree.`,
      figures: [...figures, resultFigure("Caught over air side", said, "ratio", 2)],
      nextStep: nextStepFor(verdict, {
        fallsShort: "Check both wet bulbs and the airflow, then whether all the drain water was caught.",
        cantTell: whatWouldSettle(said, range),
      }),
      inputs,
    });
  });
}

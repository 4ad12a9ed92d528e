import { nextStepFor, numberText } from "@/lib/engineering/airflow";
import { type Finding, finding, notMeasured, type Rule } from "../findings";
import { LB_PER_GALLON } from "../moisture";
import { rescaled } from "./combined-results";
import { type DeliveredCapacity, moistureName } from "./delivered-capacity";
import { judge, type Result, resultFigure, resultText, whatWouldSettle } from "./judged";
import { prepareReadings } from "./propagate";
import type { ReadingName } from "./readings";
import { startupRules } from "./rules";
import { shareChecks, shareFinding } from "./share-checks";
import { fieldNames, guarded, missingNames, type StageCheck } from "./stage-check";
import { withUncertainty } from "./with-uncertainty";

/**
 * Delivered capacity, and what it is of the expected, for one stage.
 *
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} for inputs that cannot be, naming the field.
 */
export function airFindings(check: StageCheck): readonly Finding[] {
  const needed = airReadingsOf(check);
  const missing = missingNames(check, needed, { elevationFt: check.site.elevationFt });
  const withDelivered = (rule: Rule, make: (delivered: DeliveredCapacity) => Finding): Finding =>
    missing.length > 0
      ? notMeasured(
          rule,
          missing,
          "Read airflow and, at return and supply, dry bulb with wet bulb or relative humidity.",
        )
      : guarded(check, rule, needed, () => make(check.getDelivered()));
  return [
    withDelivered(startupRules.deliveredCapacity, (delivered) => deliveredFinding(check, delivered, needed)),
    ...shareChecks(check).map((share) =>
      withDelivered(share.rule, (delivered) => shareFinding(check, share, delivered, needed)),
    ),
  ];
}

/**
 * Return minus supply in cooling, supply minus return in heating.
 *
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} for inputs that cannot be, naming the field.
 */
export function splitFinding(check: StageCheck): Finding {
  const rule = startupRules.temperatureSplit;
  const names = ["returnDryBulbF", "supplyDryBulbF"] as const;
  const missing = missingNames(check, names);
  if (missing.length > 0) return notMeasured(rule, missing, "Read return and supply dry bulb.");
  return guarded(check, rule, names, () => {
    const { values, limits } = check;
    const cooling = values.mode === "cooling";
    const prepared = prepareReadings(values.readings, names, limits["startup.systematicShare"]);
    const sign = cooling ? 1 : -1;
    const said: Result = {
      result: withUncertainty((at) => sign * (at.returnDryBulbF - at.supplyDryBulbF), prepared.inputs),
      unknownAccuracy: prepared.unknownAccuracy,
    };
    const range = cooling
      ? { min: limits["startup.splitMinF"], max: limits["startup.splitMaxF"] }
      : { min: limits["startup.riseMinF"], max: limits["startup.riseMaxF"] };
    const verdict = judge(said, range, limits["startup.unknownAccuracyBand"]);
    return finding(rule, {
      verdict,
      statement: `${values.stage}: the air changes by ${resultText(said, "°F", 1)} across the unit; ${numberText(range.min, 0)} to ${numberText(range.max, 0)} °F is plausible in ${values.mode}.`,
      figures: [resultFigure(cooling ? "Temperature split" : "Temperature rise", said, "°F", 1)],
      nextStep: nextStepFor(verdict, {
        fallsShort:
          "Check where the probes sit and the airflow first; the split alone does not judge the charge.",
        cantTell: whatWouldSettle(said, range),
      }),
      inputs: fieldNames(check, names),
    });
  });
}

/** The readings the air side of this stage rests on. */
export function airReadingsOf(check: StageCheck): readonly ReadingName[] {
  const { readings } = check.values;
  return [
    "airflowCfm",
    "returnDryBulbF",
    moistureName(readings, "return"),
    "supplyDryBulbF",
    moistureName(readings, "supply"),
  ];
}

function deliveredFinding(
  check: StageCheck,
  delivered: DeliveredCapacity,
  needed: readonly ReadingName[],
): Finding {
  const { unknownAccuracy } = delivered;
  const inputs = [...fieldNames(check, needed), "elevationFt"];
  if (check.values.mode === "heating") {
    const heat = { result: rescaled(delivered.sensibleBtuh, -1), unknownAccuracy };
    return finding(startupRules.deliveredCapacity, {
      verdict: null,
      statement: `${check.values.stage} gives the air ${resultText(heat, "Btu/h", 0)}.`,
      figures: [resultFigure("Heating capacity", heat, "Btu/h", 0)],
      inputs,
    });
  }
  const of = (result: Result["result"]): Result => ({ result, unknownAccuracy });
  const { totalBtuh, sensibleBtuh, latentBtuh, moistureLbPerH, sensibleRatio } = delivered;
  const gallons = rescaled(moistureLbPerH, 24 / LB_PER_GALLON);
  const ratioText = sensibleRatio === null ? "" : `, sensible ratio ${numberText(sensibleRatio.value, 2)}`;
  return finding(startupRules.deliveredCapacity, {
    verdict: null,
    statement: `${check.values.stage} takes ${resultText(of(totalBtuh), "Btu/h", 0)} from the air${ratioText}, and ${numberText(moistureLbPerH.value, 1)} lb/h of water.`,
    figures: [
      resultFigure("Total capacity", of(totalBtuh), "Btu/h", 0),
      resultFigure("Sensible capacity", of(sensibleBtuh), "Btu/h", 0),
      resultFigure("Latent capacity", of(latentBtuh), "Btu/h", 0),
      ...(sensibleRatio === null ? [] : [resultFigure("Sensible ratio", of(sensibleRatio), "ratio", 2)]),
      resultFigure("Moisture removal", of(moistureLbPerH), "lb/h", 1),
      resultFigure("Moisture removal a day", of(gallons), "gal/day", 1),
      { label: "Supply dew point", value: delivered.supplyAir.dewPointF, unit: "°F", decimals: 1 },
    ],
    inputs,
  });
}

import { nextStepFor, numberText } from "@/lib/engineering/airflow";
import { type Finding, finding, notMeasured, type Rule } from "../findings";
import { decimalsBeside } from "../limit-text";
import { rescaled } from "./combined-results";
import type { DeliveredCapacity } from "./delivered-capacity";
import { expectedAtConditions } from "./expected-at-conditions";
import { judge, type Result, resultFigure, resultText, whatWouldSettle } from "./judged";
import type { ReadingName } from "./readings";
import { startupRules } from "./rules";
import { fieldNames, isSteady, type StageCheck } from "./stage-check";

/** One comparison with the expected value at these conditions. */
export type ShareCheck = {
  readonly rule: Rule;
  readonly what: string;
  readonly unit: "Btu/h" | "lb/h";
  readonly decimals: number;
  readonly kind: "total" | "sensible" | "moisture";
  readonly least: number;
};

/** The comparisons a stage of this mode gets. */
export function shareChecks({ values, limits }: StageCheck): readonly ShareCheck[] {
  const cooling = values.mode === "cooling";
  const heat = { unit: "Btu/h", decimals: 0 } as const;
  const total: ShareCheck = {
    ...heat,
    rule: startupRules.totalCapacity,
    what: cooling ? "total capacity" : "heating capacity",
    kind: "total",
    least: limits["startup.totalShareMin"],
  };
  if (!cooling) return [total];
  return [
    total,
    {
      ...heat,
      rule: startupRules.sensibleCapacity,
      what: "sensible capacity",
      kind: "sensible",
      least: limits["startup.sensibleShareMin"],
    },
    {
      rule: startupRules.moistureRemoval,
      what: "moisture removal",
      unit: "lb/h",
      decimals: 1,
      kind: "moisture",
      least: limits["startup.moistureShareMin"],
    },
  ];
}

/**
 * Delivered over expected for one kind of capacity.
 *
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} for inputs that cannot be, naming the field.
 */
export function shareFinding(
  check: StageCheck,
  { rule, what, unit, decimals, kind, least }: ShareCheck,
  air: DeliveredCapacity,
  needed: readonly ReadingName[],
): Finding {
  const { values, limits } = check;
  // In heating the air side gives sensible heat only, counted positive.
  const delivered = values.mode === "cooling" ? air : { ...air, totalBtuh: rescaled(air.sensibleBtuh, -1) };
  const field = ({ total: "totalBtuh", sensible: "sensibleBtuh", moisture: "moistureLbPerH" } as const)[kind];
  const expected = values.expected[field];
  const expectedField = fieldNames(check, [`expected.${field}`]);
  if (expected === null) {
    return notMeasured(
      rule,
      expectedField,
      "Choose the equipment with its performance data, so that the expected value at these conditions is known.",
    );
  }
  const inputs = [...fieldNames(check, [...needed, "elevationFt", "steadyMinutes"]), ...expectedField];
  const share = expectedAtConditions(delivered, values.expected)[`${kind}Share`];
  if (share === null) {
    return finding(rule, {
      verdict: null,
      statement: `${values.stage}: no ${what} worth measuring is expected at these conditions.`,
      inputs,
    });
  }
  const { unknownAccuracy } = air;
  const measured: Result = { result: delivered[field], unknownAccuracy };
  const said: Result = { result: share, unknownAccuracy };
  const range = { min: least, max: null };
  const steady = isSteady(check);
  const verdict = steady ? judge(said, range, limits["startup.unknownAccuracyBand"]) : "can't tell";
  return finding(rule, {
    verdict,
    statement: `${values.stage}: ${what} ${resultText(measured, unit, decimals)} is ${numberText(share.value, decimalsBeside(share.value, [least], 2))} of the ${numberText(expected, decimals)} ${unit} expected at these conditions; at least ${numberText(least, 2)} is asked for.`,
    figures: [
      resultFigure("Delivered", measured, unit, decimals),
      { label: "Expected", value: expected, unit, decimals },
      resultFigure("Share of expected", said, "ratio", 2),
    ],
    nextStep: nextStepFor(verdict, {
      fallsShort: "Check airflow, then charge, then duct leakage between coil and probes, in this order.",
      cantTell: steady ? whatWouldSettle(said, range) : "Read again after steady running.",
    }),
    inputs,
  });
}

import { type Finding, finding, notMeasured } from "../findings";
import { textBeside } from "../limit-text";
import { requireRange } from "../units";
import type { CoolingMatch } from "./cooling-ratios";
import { equipmentRules } from "./rules";
import { laterEdition, ratioFigure, type SizingInput, whole } from "./sizing-input";

/**
 * How far variable-speed equipment sized to heating turns down, against the limit the company entered.
 *
 * @throws {@link OutOfRangeError} for an input outside its range, naming the field.
 */
export function turnDownFindings(input: SizingInput, match: CoolingMatch): readonly Finding[] {
  const later = laterEdition(input);
  if (later === null) return [];
  const rule = equipmentRules.turnDown;
  const max = later.leastCapacityMaxRatio;
  if (max === null || input.leastCapacityBtuh === null) {
    const missing = [
      ...(max === null ? ["edition.leastCapacityMaxRatio"] : []),
      ...(input.leastCapacityBtuh === null ? ["leastCapacityBtuh"] : []),
    ];
    return [
      notMeasured(
        rule,
        missing,
        "Enter the edition's turn-down limit and the maker's least cooling capacity.",
      ),
    ];
  }
  requireRange("edition.leastCapacityMaxRatio", max, "ratio", 0.01, 10);
  const least = requireRange(
    "leastCapacityBtuh",
    input.leastCapacityBtuh,
    "Btu/h",
    0,
    match.totalCapacityBtuh,
  );
  const found = least / (match.sensibleLoadBtuh + match.latentLoadBtuh);
  const meets = found <= max;
  return [
    finding(rule, {
      verdict: meets ? "meets" : "falls short",
      statement: `Least cooling capacity ${whole(least)} Btu/h is ${textBeside(found, [max], 2)} of the cooling load; at most ${max.toFixed(2)} is the limit your company has entered.`,
      figures: [ratioFigure("Least capacity over load", found)],
      nextStep: meets ? null : "Choose equipment that turns down further, or size it to cooling.",
      inputs: ["leastCapacityBtuh", "sensibleLoadBtuh", "latentLoadBtuh"],
    }),
  ];
}

import { type Finding, finding, notMeasured } from "../findings";
import { textBeside } from "../limit-text";
import {
  type CoolingMatch,
  type CoolingRatios,
  coolingRatios,
  type EquipmentLimitValues as Limits,
} from "./cooling-ratios";
import { equipmentRules } from "./rules";
import { NEEDED, ratioFigure, type SizingInput, whole } from "./sizing-input";
import { totalFinding } from "./total-capacity";
import { turnDownFindings } from "./turn-down";

/**
 * Whether the equipment fits the load: total, sensible and latent, by the selected edition and the company's limits.
 *
 * @param input - Loads and capacities, Btu/h, each `null` until known; ranges at {@link coolingRatios}. Degree days 0 to 20,000 °F·day.
 * @param limits - Limits in force.
 * @returns One finding a statement. The latent warning band is unverified, so its finding is never binding.
 * @throws {@link OutOfRangeError} outside those ranges.
 * @see ANSI/ACCA 3 Manual S-2014 (recalled).
 */
export function sizingFindings(input: SizingInput, limits: Limits): readonly Finding[] {
  const match = completeMatch(input);
  if (match === null) {
    const missing = NEEDED.filter((field) => input[field] === null);
    const next = "Enter the load summary and the maker's capacity at the design condition.";
    return [
      notMeasured(equipmentRules.totalCapacity, missing, next),
      notMeasured(equipmentRules.sensibleCapacity, missing, next),
      notMeasured(equipmentRules.latentCapacity, missing, next),
    ];
  }
  const ratios = coolingRatios(match);
  return [
    totalFinding(input, match, ratios, limits),
    sensibleFinding(match, ratios, limits),
    latentFinding(match, ratios, limits),
    ...turnDownFindings(input, match),
  ];
}

function completeMatch(input: SizingInput): CoolingMatch | null {
  const { sensibleLoadBtuh, latentLoadBtuh, totalCapacityBtuh, sensibleCapacityBtuh } = input;
  if (
    sensibleLoadBtuh === null ||
    latentLoadBtuh === null ||
    totalCapacityBtuh === null ||
    sensibleCapacityBtuh === null
  ) {
    return null;
  }
  return { sensibleLoadBtuh, latentLoadBtuh, totalCapacityBtuh, sensibleCapacityBtuh };
}

function sensibleFinding(match: CoolingMatch, ratios: CoolingRatios, limits: Limits): Finding {
  const min = limits["equipment.sensibleMinRatio"];
  const meets = ratios.sensibleRatio >= min;
  return finding(equipmentRules.sensibleCapacity, {
    verdict: meets ? "meets" : "falls short",
    statement: `Sensible capacity ${whole(ratios.adjustedSensibleBtuh)} Btu/h with half the excess latent is ${textBeside(ratios.sensibleRatio, [min], 2)} of the sensible load ${whole(match.sensibleLoadBtuh)} Btu/h; at least ${min.toFixed(2)} is needed.`,
    figures: [ratioFigure("Sensible capacity over load", ratios.sensibleRatio)],
    nextStep: meets ? null : "Raise the airflow or choose equipment with a higher sensible capacity.",
    inputs: [...NEEDED],
  });
}

function latentFinding(match: CoolingMatch, ratios: CoolingRatios, limits: Limits): Finding {
  const min = limits["equipment.latentMinRatio"];
  const inputs = [...NEEDED];
  if (ratios.latentRatio === null) {
    return finding(equipmentRules.latentCapacity, {
      verdict: null,
      statement: "The load summary has no latent load to compare with.",
      nextStep: "Check that a latent load of zero is meant.",
      inputs,
    });
  }
  const statement = `Latent capacity ${whole(ratios.adjustedLatentBtuh)} Btu/h is ${textBeside(ratios.latentRatio, [min], 2)} of the latent load ${whole(match.latentLoadBtuh)} Btu/h; at least ${min.toFixed(2)} is needed.`;
  const figures = [ratioFigure("Latent capacity over load", ratios.latentRatio)];
  if (ratios.latentRatio >= min) {
    return finding(equipmentRules.latentCapacity, { verdict: "meets", statement, figures, inputs });
  }
  const nextStep = "Lower the airflow, use a colder coil or a larger indoor coil, or plan a dehumidifier.";
  const inBand = ratios.latentRatio >= limits["equipment.latentWarningMinRatio"];
  const rule = inBand ? equipmentRules.latentWarning : equipmentRules.latentCapacity;
  return finding(rule, { verdict: "falls short", statement, figures, nextStep, inputs });
}

import { type Finding, finding, notMeasured } from "../findings";
import { textBeside } from "../limit-text";
import { requireRange } from "../units";
import {
  type CoolingMatch,
  type CoolingRatios,
  type EquipmentLimitValues as Limits,
  totalMaxRatio,
} from "./cooling-ratios";
import { equipmentRules } from "./rules";
import { laterEdition, NEEDED, ratioFigure, type SizingInput, whole } from "./sizing-input";

/**
 * Total capacity over load against the range of the edition, with the cold-climate allowance.
 *
 * @throws {@link OutOfRangeError} for an input outside its range, naming the field.
 */
export function totalFinding(
  input: SizingInput,
  match: CoolingMatch,
  ratios: CoolingRatios,
  limits: Limits,
): Finding {
  const rule = equipmentRules.totalCapacity;
  const min = limits["equipment.totalMinRatio"];
  const later = laterEdition(input);
  const max = later ? later.totalMaxRatio : totalMaxRatio(input.kind, limits);
  if (max === null) {
    return notMeasured(
      rule,
      ["edition.totalMaxRatio"],
      "Enter the upper limit of the edition your company follows for variable-speed heat pumps.",
    );
  }
  requireRange("edition.totalMaxRatio", max, "ratio", 0.5, 10);
  const figures = [ratioFigure("Total capacity over load", ratios.totalRatio)];
  const said = `Total capacity ${whole(match.totalCapacityBtuh)} Btu/h is ${textBeside(ratios.totalRatio, [min, max], 2)} of the load`;
  const inputs = [...NEEDED];

  const excess = match.totalCapacityBtuh - match.sensibleLoadBtuh - match.latentLoadBtuh;
  if (ratios.totalRatio > max && input.heatPump) {
    const cold = coldClimate(input, match, limits);
    const allowed = limits["equipment.coldClimateExcessBtuh"];
    if (cold === true && excess <= allowed) {
      return finding(rule, {
        verdict: "meets",
        statement: `${said}, ${whole(excess)} Btu/h above it; a cold-climate heat pump with little latent load may have ${whole(allowed)} Btu/h more.`,
        figures,
        inputs: [...inputs, "heatingDegreeDays65", "coolingDegreeDays50"],
      });
    }
    if (cold === null && excess <= allowed) {
      return finding(rule, {
        verdict: "can't tell",
        statement: `${said}; ${min.toFixed(2)} to ${max.toFixed(2)} is the range for ${input.kind} equipment unless the cold-climate allowance applies.`,
        figures,
        nextStep: "Enter the site's heating (65 °F) and cooling (50 °F) degree days.",
        inputs: [...inputs, "heatingDegreeDays65", "coolingDegreeDays50"],
      });
    }
  }
  const meets = ratios.totalRatio >= min && ratios.totalRatio <= max;
  return finding(rule, {
    verdict: meets ? "meets" : "falls short",
    statement: `${said}; ${min.toFixed(2)} to ${max.toFixed(2)} is the range for ${input.kind} equipment.`,
    figures,
    nextStep: meets
      ? null
      : ratios.totalRatio > max
        ? "Choose a smaller size or a lower capacity setting, or check the load for padding."
        : "Choose a larger size or capacity setting, or check the load.",
    inputs,
  });
}

/** `null`: degree days not known and the load alone does not decide it. */
function coldClimate(input: SizingInput, match: CoolingMatch, limits: Limits): boolean | null {
  const loadRatio = match.sensibleLoadBtuh / (match.sensibleLoadBtuh + match.latentLoadBtuh);
  if (loadRatio < limits["equipment.coldClimateSensibleRatio"]) return false;
  if (input.heatingDegreeDays65 === null || input.coolingDegreeDays50 === null) return null;
  const heating = requireRange("heatingDegreeDays65", input.heatingDegreeDays65, "°F·day", 0, 20_000);
  const cooling = requireRange("coolingDegreeDays50", input.coolingDegreeDays50, "°F·day", 0, 20_000);
  return heating >= limits["equipment.coldClimateDegreeDayRatio"] * cooling;
}

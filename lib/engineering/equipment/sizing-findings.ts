import { type Figure, type Finding, finding, notMeasured } from "../findings";
import { requireRange } from "../units";
import {
  type CoolingMatch,
  type CoolingRatios,
  coolingRatios,
  type EquipmentKind,
  type EquipmentLimitValues as Limits,
  totalMaxRatio,
} from "./cooling-ratios";
import { equipmentRules } from "./rules";

/** Which edition of the sizing rules holds. Numbers of later editions are not encoded: the company enters them. */
export type SizingEdition =
  | { readonly name: "Manual S-2014" }
  | {
      readonly name: "later edition";
      /** Most total capacity over load; `null` until the company has entered it. */
      readonly totalMaxRatio: number | null;
      /** Most of the equipment's least capacity over load (turn-down); `null` until entered. */
      readonly leastCapacityMaxRatio: number | null;
    };

export type SizingInput = {
  readonly kind: EquipmentKind;
  readonly heatPump: boolean;
  readonly edition: SizingEdition;
  readonly sensibleLoadBtuh: number | null;
  readonly latentLoadBtuh: number | null;
  readonly totalCapacityBtuh: number | null;
  readonly sensibleCapacityBtuh: number | null;
  /** Least total cooling capacity of variable-speed equipment at the design condition. */
  readonly leastCapacityBtuh: number | null;
  readonly heatingDegreeDays65: number | null;
  readonly coolingDegreeDays50: number | null;
};

const NEEDED = ["sensibleLoadBtuh", "latentLoadBtuh", "totalCapacityBtuh", "sensibleCapacityBtuh"] as const;

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

function totalFinding(
  input: SizingInput,
  match: CoolingMatch,
  ratios: CoolingRatios,
  limits: Limits,
): Finding {
  const rule = equipmentRules.totalCapacity;
  const min = limits["equipment.totalMinRatio"];
  const max =
    usesLaterEdition(input) && input.edition.name === "later edition"
      ? input.edition.totalMaxRatio
      : totalMaxRatio(input.kind, limits);
  if (max === null) {
    return notMeasured(
      rule,
      ["edition.totalMaxRatio"],
      "Enter the upper limit of the edition your company follows for variable-speed heat pumps.",
    );
  }
  requireRange("edition.totalMaxRatio", max, "ratio", 0.5, 10);
  const figures = [ratioFigure("Total capacity over load", ratios.totalRatio)];
  const said = `Total capacity ${whole(match.totalCapacityBtuh)} Btu/h is ${ratios.totalRatio.toFixed(2)} of the load`;
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

function sensibleFinding(match: CoolingMatch, ratios: CoolingRatios, limits: Limits): Finding {
  const min = limits["equipment.sensibleMinRatio"];
  const meets = ratios.sensibleRatio >= min;
  return finding(equipmentRules.sensibleCapacity, {
    verdict: meets ? "meets" : "falls short",
    statement: `Sensible capacity ${whole(ratios.adjustedSensibleBtuh)} Btu/h with half the excess latent is ${ratios.sensibleRatio.toFixed(2)} of the sensible load ${whole(match.sensibleLoadBtuh)} Btu/h; at least ${min.toFixed(2)} is needed.`,
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
  const statement = `Latent capacity ${whole(ratios.adjustedLatentBtuh)} Btu/h is ${ratios.latentRatio.toFixed(2)} of the latent load ${whole(match.latentLoadBtuh)} Btu/h; at least ${min.toFixed(2)} is needed.`;
  const figures = [ratioFigure("Latent capacity over load", ratios.latentRatio)];
  if (ratios.latentRatio >= min) {
    return finding(equipmentRules.latentCapacity, { verdict: "meets", statement, figures, inputs });
  }
  const nextStep = "Lower the airflow, use a colder coil or a larger indoor coil, or plan a dehumidifier.";
  const inBand = ratios.latentRatio >= limits["equipment.latentWarningMinRatio"];
  const rule = inBand ? equipmentRules.latentWarning : equipmentRules.latentCapacity;
  return finding(rule, { verdict: "falls short", statement, figures, nextStep, inputs });
}

function usesLaterEdition(input: SizingInput): boolean {
  return input.edition.name === "later edition" && input.heatPump && input.kind === "variable speed";
}

function turnDownFindings(input: SizingInput, match: CoolingMatch): readonly Finding[] {
  if (!usesLaterEdition(input) || input.edition.name !== "later edition") return [];
  const rule = equipmentRules.turnDown;
  const max = input.edition.leastCapacityMaxRatio;
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
      statement: `Least cooling capacity ${whole(least)} Btu/h is ${found.toFixed(2)} of the cooling load; at most ${max.toFixed(2)} is the limit your company has entered.`,
      figures: [ratioFigure("Least capacity over load", found)],
      nextStep: meets ? null : "Choose equipment that turns down further, or size it to cooling.",
      inputs: ["leastCapacityBtuh", "sensibleLoadBtuh", "latentLoadBtuh"],
    }),
  ];
}

function ratioFigure(label: string, value: number): Figure {
  return { label, value, unit: "ratio", decimals: 2 };
}

function whole(value: number): string {
  return Math.round(value).toLocaleString("en-US");
}

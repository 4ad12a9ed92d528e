import { type Finding, finding, notMeasured, type Rule } from "../findings";
import type { LimitValues } from "../limit-definition";
import { textBeside } from "../limit-text";
import { type MoistureCondition, moistureBalance } from "./balance";
import { type LatentRatioInput, latentRatio } from "./latent-ratio";
import type { moistureLimits } from "./limits";
import type { HouseholdMoisture } from "./moisture-sources";
import { moistureRules } from "./rules";

const MOULD_CAUTION =
  "Mould is judged on surfaces, not by one humidity number; if any is found, follow local rules and licensed practice.";

/** A condition as it is filled in: every part `null` until it is known. */
export type ConditionEntry = {
  readonly [K in Exclude<keyof MoistureCondition, "household">]: MoistureCondition[K] | null;
} & {
  readonly household: { readonly [K in keyof HouseholdMoisture]: HouseholdMoisture[K] | null };
};

export type MoistureFindingsInput = {
  /** Cooling design condition with the mean removal of the cooling. */
  readonly design: ConditionEntry;
  /** Dew-point design condition; no cooling call, so no cooling removal. */
  readonly wetMild: Omit<ConditionEntry, "coolingRemovalLbPerH">;
  /** Coil and fan between calls at part load; `null` until known. */
  readonly partLoad: LatentRatioInput | null;
};

/**
 * Whether the water balances at the design condition and in mild, wet weather, and what the fan setting costs.
 *
 * @param input - Each value `null` until it is known; ranges at the functions used.
 * @param limits - Limits in force.
 * @returns Three findings.
 * @throws {@link OutOfRangeError} outside those ranges.
 * @see Water balance (physics); Henderson & Rengarajan 1996 (published).
 */
export function moistureFindings(
  input: MoistureFindingsInput,
  limits: LimitValues<typeof moistureLimits>,
): readonly Finding[] {
  const most = limits["moisture.netMaxLbPerH"];
  return [
    balanceFinding(
      moistureRules.designBalance,
      "design",
      input.design,
      most,
      "Lower the airflow, cut outdoor air to what is needed, or add dehumidification.",
    ),
    balanceFinding(
      moistureRules.wetMildBalance,
      "wetMild",
      { ...input.wetMild, coolingRemovalLbPerH: 0 },
      most,
      "Plan a dehumidifier of that capacity at the house's condition, by the maker's data, and cut damp sources.",
    ),
    reEvaporationFinding(input.partLoad, limits["moisture.latentRatioMin"]),
  ];
}

/** The names of what is missing, or the whole condition. */
function completed(entry: ConditionEntry, path: string): MoistureCondition | readonly string[] {
  const { outdoor, indoor, outdoorAirCfm, coolingRemovalLbPerH, dehumidifierLbPerH } = entry;
  const { people, personLbPerH, householdPintsPerDay, groundPintsPerDay } = entry.household;
  if (
    outdoor === null ||
    indoor === null ||
    outdoorAirCfm === null ||
    coolingRemovalLbPerH === null ||
    dehumidifierLbPerH === null ||
    people === null ||
    personLbPerH === null ||
    householdPintsPerDay === null ||
    groundPintsPerDay === null
  ) {
    const missing = (values: object, prefix: string): readonly string[] =>
      Object.entries(values)
        .filter(([, value]) => value === null)
        .map(([field]) => `${prefix}.${field}`);
    return [...missing(entry, path), ...missing(entry.household, `${path}.household`)];
  }
  const household = { people, personLbPerH, householdPintsPerDay, groundPintsPerDay };
  return { outdoor, indoor, outdoorAirCfm, coolingRemovalLbPerH, dehumidifierLbPerH, household };
}

function balanceFinding(
  rule: Rule,
  path: string,
  entry: ConditionEntry,
  most: number,
  remedy: string,
): Finding {
  const condition = completed(entry, path);
  if (!("outdoor" in condition)) {
    return notMeasured(
      rule,
      condition,
      "Enter outdoor and indoor air, outdoor airflow and the house's sources.",
    );
  }
  const balance = moistureBalance(condition);
  const meets = balance.netLbPerH <= most;
  const into = balance.householdLbPerH + balance.outdoorAirLbPerH;
  const missing = balance.missingPintsPerDay;
  return finding(rule, {
    verdict: meets ? "meets" : "falls short",
    statement: `${into.toFixed(2)} lb/h of water come in and ${balance.removalLbPerH.toFixed(2)} lb/h are removed; ${
      meets
        ? "the house can stay at the indoor air aimed at."
        : `${balance.netLbPerH.toFixed(2)} lb/h (${missing.toFixed(0)} pint/day) are left to wet the house.`
    }`,
    figures: [
      { label: "Household and ground", value: balance.householdLbPerH, unit: "lb/h", decimals: 2 },
      { label: "Outdoor air", value: balance.outdoorAirLbPerH, unit: "lb/h", decimals: 2 },
      { label: "Removal", value: balance.removalLbPerH, unit: "lb/h", decimals: 2 },
      { label: "Net", value: balance.netLbPerH, unit: "lb/h", decimals: 2 },
      { label: "Missing capacity", value: missing, unit: "pint/day", decimals: 0 },
    ],
    nextStep: meets ? null : remedy,
    caution: meets ? null : MOULD_CAUTION,
    inputs: [path],
  });
}

function reEvaporationFinding(partLoad: LatentRatioInput | null, least: number): Finding {
  const rule = moistureRules.reEvaporation;
  if (partLoad === null) {
    return notMeasured(
      rule,
      ["partLoad"],
      "Enter cycling rate, running share and the fan setting between calls.",
    );
  }
  const kept = latentRatio(partLoad).latentRatio;
  const meets = kept >= least;
  return finding(rule, {
    verdict: meets ? "meets" : "falls short",
    statement: `At ${(100 * partLoad.runFraction).toFixed(0)} % running time ${textBeside(100 * kept, [100 * least], 0)} % of the latent capacity is kept; at least ${(100 * least).toFixed(0)} % is wanted.`,
    figures: [{ label: "Latent capacity kept", value: kept, unit: "ratio", decimals: 2 }],
    nextStep: meets
      ? null
      : "Turn the fan off between calls, shorten its run-on, or make calls longer with a lower capacity setting.",
    inputs: ["partLoad"],
  });
}

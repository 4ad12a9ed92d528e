import { type Finding, finding, notMeasured } from "../findings";
import type { LimitValues } from "../limit-definition";
import { requireRange } from "../units";
import type { loadLimits } from "./limits";
import { btuhText } from "./readings";
import { loadRules } from "./rules";

/** The parts a designer's report splits each load into, by the field that holds them. */
export const LOAD_PARTS = {
  sensibleCoolingBtuh: {
    name: "sensible cooling load",
    rule: loadRules.componentsSensible,
    parts: {
      sensibleWindowsBtuh: "windows and glass doors",
      sensibleWallsBtuh: "walls and doors",
      sensibleCeilingsBtuh: "ceilings and roof",
      sensibleFloorsBtuh: "floors",
      sensibleInfiltrationBtuh: "infiltration",
      sensibleVentilationBtuh: "ventilation",
      sensibleDuctsBtuh: "ducts",
      sensiblePeopleBtuh: "people",
      sensibleAppliancesBtuh: "appliances and lights",
      sensibleOtherBtuh: "other",
    },
  },
  latentCoolingBtuh: {
    name: "latent cooling load",
    rule: loadRules.componentsLatent,
    parts: {
      latentInfiltrationBtuh: "infiltration",
      latentVentilationBtuh: "ventilation",
      latentDuctsBtuh: "ducts",
      latentPeopleBtuh: "people",
      latentOtherBtuh: "other",
    },
  },
  heatingBtuh: {
    name: "heating load",
    rule: loadRules.componentsHeating,
    parts: {
      heatingWindowsBtuh: "windows and glass doors",
      heatingWallsBtuh: "walls and doors",
      heatingCeilingsBtuh: "ceilings and roof",
      heatingFloorsBtuh: "floors",
      heatingInfiltrationBtuh: "infiltration",
      heatingVentilationBtuh: "ventilation",
      heatingDuctsBtuh: "ducts",
      heatingOtherBtuh: "other",
    },
  },
} as const;

export type LoadTotal = keyof typeof LOAD_PARTS;
type Parts = typeof LOAD_PARTS;
type PartField = { [T in LoadTotal]: keyof Parts[T]["parts"] }[LoadTotal];

/** The totals of a load summary and their parts, Btu/h. `null`: not given. */
export type LoadComponents = { readonly [F in LoadTotal | PartField]: number | null };

/**
 * Do the parts of each load add up to its total? A load with totals only has nothing to be checked and gets no finding.
 *
 * @param load - Totals and parts, 0 to 5 million Btu/h each; `null` where not given, which is not zero.
 * @param limits - The company limits in force.
 * @returns One finding for each of the three loads that has parts.
 * @throws {@link OutOfRangeError} for a number outside that range, naming the field.
 * @see Sum (physics); the tolerance is a trade habit without a source.
 */
export function componentFindings(
  load: LoadComponents,
  limits: LimitValues<typeof loadLimits>,
): readonly Finding[] {
  return (Object.keys(LOAD_PARTS) as LoadTotal[]).flatMap((total) => sumFinding(load, total, limits) ?? []);
}

function sumFinding(
  load: LoadComponents,
  totalField: LoadTotal,
  limits: LimitValues<typeof loadLimits>,
): Finding | null {
  const { name, rule, parts } = LOAD_PARTS[totalField];
  const named = Object.entries(parts) as [PartField, string][];
  const given = named.flatMap(([field, label]) => {
    const value = load[field];
    return value === null ? [] : [{ field, label, value: requireRange(field, value, "Btu/h", 0, 5_000_000) }];
  });
  if (given.length === 0) return null;
  if (load[totalField] === null) {
    return notMeasured(rule, [totalField], `Enter the total of the ${name} beside its parts.`);
  }
  const total = requireRange(totalField, load[totalField], "Btu/h", 0, 5_000_000);
  const sum = given.reduce((before, part) => before + part.value, 0);
  const tolerance = (total * limits["load.componentTolerance"]) / 100;
  const missing = named.filter(([field]) => load[field] === null);
  const verdict =
    Math.abs(sum - total) <= tolerance
      ? "meets"
      : sum < total && missing.length > 0
        ? "can't tell"
        : "falls short";
  const compared = `The parts of the ${name} add up to ${btuhText(sum)}; the total entered is ${btuhText(total)}, and ${btuhText(tolerance)} (${limits["load.componentTolerance"].toFixed(1)} %) is not counted.`;
  const open = `${missing.length} of ${named.length} parts are not entered: ${missing.map(([, label]) => label).join(", ")}.`;
  return finding(rule, {
    verdict,
    statement: verdict === "can't tell" ? `${compared} ${open}` : compared,
    figures: [
      { label: `sum of the ${name}`, value: sum, unit: "Btu/h", decimals: 0 },
      ...given.map(({ label, value }) => ({ label, value, unit: "Btu/h", decimals: 0 })),
    ],
    nextStep:
      verdict === "meets"
        ? null
        : verdict === "can't tell"
          ? "Enter the parts that are missing, 0 where there are none."
          : "Compare the parts and the total with the designer's report, line by line.",
    inputs: [totalField, ...given.map((part) => part.field)],
  });
}

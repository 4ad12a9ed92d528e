import { type Finding, finding } from "../findings";
import type { LimitValues } from "../limit-definition";
import { checkReadings } from "./check-readings";
import type { loadLimits } from "./limits";
import { additionChecks } from "./padding-additions";
import { conditionChecks, type PaddingCheck } from "./padding-conditions";
import { btuhText, type LoadReadings } from "./readings";
import { loadRules } from "./rules";

/**
 * Looks for padding: is the load that of the house as it is, or were reserves stacked on it?
 *
 * Each deviation shows what it does to the load. Temperatures are weighed by the load's own heating side: heating load over its
 * temperature difference is what one °F is worth. Humidity is weighed by the outdoor air that ventilation and leaks bring in.
 *
 * @param readings - The load summary and the weather's own design values; `null` where not given.
 * @param limits - The company limits in force.
 * @returns One finding for each of nine checks, and their sum on the cooling load, for information.
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} for values that cannot be, naming them.
 * @see ANSI/ACCA 2 Manual J (recalled); effects computed.
 */
export function paddingFindings(
  readings: LoadReadings,
  limits: LimitValues<typeof loadLimits>,
): readonly Finding[] {
  checkReadings(readings);
  const checks = [...conditionChecks(readings, limits), ...additionChecks(readings)];
  return [...checks.map((check) => check.finding), totalFinding(checks, readings)];
}

function totalFinding(checks: readonly PaddingCheck[], readings: LoadReadings): Finding {
  const known = checks.flatMap((check) =>
    check.coolingEffectBtuh === null ? [] : [check.coolingEffectBtuh],
  );
  const open = checks.length - known.length;
  const sum = known.reduce((total, effect) => total + effect, 0);
  const { sensibleCoolingBtuh, latentCoolingBtuh } = readings;
  const load =
    sensibleCoolingBtuh === null || latentCoolingBtuh === null ? 0 : sensibleCoolingBtuh + latentCoolingBtuh;
  const share = load >= 1 ? `, ${((100 * sum) / load).toFixed(0)} % of ${btuhText(load)}` : "";
  const rest = open === 0 ? "" : ` ${open} of ${checks.length} checks are open and not counted.`;
  return finding(loadRules.paddingTotal, {
    verdict: null,
    statement: `Together the deviations ${sum < 0 ? "take" : "add"} about ${btuhText(Math.abs(sum))} ${sum < 0 ? "from" : "to"} the cooling load${share}.${rest}`,
    figures: [{ label: "padding in the cooling load", value: sum, unit: "Btu/h", decimals: 0 }],
    inputs: ["sensibleCoolingBtuh", "latentCoolingBtuh"],
  });
}

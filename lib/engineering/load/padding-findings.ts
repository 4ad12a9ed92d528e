import { type Finding, finding, type Verdict } from "../findings";
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
  const checks = checksOf(readings, limits);
  return [...checks.map((check) => check.finding), totalFinding(effectsOf(checks), readings)];
}

/** What each deviation adds to the loads, Btu/h, and together. `null`: cannot be said from what is entered. */
export type PaddingEffects = {
  readonly rows: readonly {
    readonly title: string;
    readonly verdict: Verdict | null;
    readonly coolingBtuh: number | null;
    readonly heatingBtuh: number | null;
  }[];
  /** Sums of what is known. */
  readonly coolingBtuh: number;
  readonly heatingBtuh: number;
  /** Checks whose effect on the cooling load is not known and not in the sum. */
  readonly open: number;
};

/**
 * The effects of the padding check side by side, with their sums.
 *
 * @param readings - The load summary and the weather's own design values; `null` where not given.
 * @param limits - The company limits in force.
 * @returns Btu/h; negative where a deviation takes from the load.
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} for values that cannot be, naming them.
 * @see The same checks as {@link paddingFindings} (computed).
 */
export function paddingEffects(
  readings: LoadReadings,
  limits: LimitValues<typeof loadLimits>,
): PaddingEffects {
  return effectsOf(checksOf(readings, limits));
}

function checksOf(readings: LoadReadings, limits: LimitValues<typeof loadLimits>): readonly PaddingCheck[] {
  checkReadings(readings);
  return [...conditionChecks(readings, limits), ...additionChecks(readings)];
}

function effectsOf(checks: readonly PaddingCheck[]): PaddingEffects {
  const sum = (effects: readonly (number | null)[]) =>
    effects.reduce<number>((total, effect) => total + (effect ?? 0), 0);
  return {
    rows: checks.map((check) => ({
      title: check.finding.title,
      verdict: check.finding.verdict,
      coolingBtuh: check.coolingEffectBtuh,
      heatingBtuh: check.heatingEffectBtuh,
    })),
    coolingBtuh: sum(checks.map((check) => check.coolingEffectBtuh)),
    heatingBtuh: sum(checks.map((check) => check.heatingEffectBtuh)),
    open: checks.filter((check) => check.coolingEffectBtuh === null).length,
  };
}

function totalFinding(effects: PaddingEffects, readings: LoadReadings): Finding {
  const { rows, open, coolingBtuh: sum } = effects;
  const { sensibleCoolingBtuh, latentCoolingBtuh } = readings;
  const load =
    sensibleCoolingBtuh === null || latentCoolingBtuh === null ? 0 : sensibleCoolingBtuh + latentCoolingBtuh;
  const share = load >= 1 ? `, ${((100 * Math.abs(sum)) / load).toFixed(0)} % of ${btuhText(load)}` : "";
  const rest = open === 0 ? "" : ` ${open} of ${rows.length} checks are open and not counted.`;
  const figure = (label: string, value: number) => ({ label, value, unit: "Btu/h", decimals: 0 });
  return finding(loadRules.paddingTotal, {
    verdict: null,
    statement: `Together the deviations ${sum < 0 ? "take" : "add"} about ${btuhText(Math.abs(sum))} ${sum < 0 ? "from" : "to"} the cooling load${share}.${rest}`,
    figures: [
      figure("padding in the cooling load", sum),
      ...rows.flatMap(({ title, coolingBtuh }) =>
        coolingBtuh === null || coolingBtuh === 0 ? [] : [figure(title, coolingBtuh)],
      ),
      ...(effects.heatingBtuh === 0 ? [] : [figure("padding in the heating load", effects.heatingBtuh)]),
    ],
    inputs: ["sensibleCoolingBtuh", "latentCoolingBtuh"],
  });
}

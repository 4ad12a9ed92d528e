import { type Finding, finding, type Rule, type Verdict, verdictOnInterval } from "../findings";
import { refrigerantCautions } from "./cautions";
import type { ChargeTarget } from "./charge-targets";

/** A measured superheat or subcooling and what it is held against. Uncertainties are expanded (k = 2), °F. */
type ChargeCheck = {
  readonly rule: Rule;
  readonly name: "Superheat" | "Subcooling";
  readonly measured: number;
  /** Uncertainty of the refrigerant table. */
  readonly model: number;
  readonly instrument: number | null;
  readonly target: ChargeTarget;
  readonly tolerance: number;
  readonly steady: boolean;
  readonly inputs: readonly string[];
};

/** The finding on one measured superheat or subcooling. */
export function chargeVerdict(check: ChargeCheck): Finding {
  const { measured, target, tolerance } = check;
  const uncertainty = Math.hypot(check.model, check.instrument ?? 0);
  const figure = {
    label: check.name.toLowerCase(),
    value: measured,
    unit: "°F",
    decimals: 1,
    uncertainty,
  };
  const accuracy =
    check.instrument === null
      ? " Instrument accuracy is not entered, so only that of the refrigerant table is counted."
      : "";
  const read = `${check.name} is ${measured.toFixed(1)} ± ${uncertainty.toFixed(1)} °F`;
  const common = { inputs: check.inputs, caution: refrigerantCautions.openCircuit };

  if (measured < -uncertainty) {
    return finding(check.rule, {
      ...common,
      verdict: "can't tell",
      statement: `${read}, below zero, which the refrigerant cannot do: a reading, its place or the refrigerant is wrong.${accuracy}`,
      figures: [figure],
      nextStep:
        "Check the gauge zero, the clamp probe's contact and insulation, and which refrigerant is in the system.",
    });
  }
  if (target.valueF === null) {
    return finding(check.rule, {
      ...common,
      verdict: target.open,
      statement: `${read}; ${target.why}.${accuracy}`,
      figures: [figure],
      nextStep: target.nextStep,
    });
  }
  const verdict = check.steady
    ? verdictOnInterval(measured, uncertainty, {
        min: target.valueF - tolerance,
        max: target.valueF + tolerance,
      })
    : "can't tell";
  return finding(check.rule, {
    ...common,
    verdict,
    statement: `${read}; the target from ${target.from} is ${target.valueF.toFixed(1)} ± ${tolerance.toFixed(1)} °F.${accuracy}`,
    figures: [figure, { label: "target", value: target.valueF, unit: "°F", decimals: 1 }],
    nextStep: nextStep(verdict, check, target.valueF),
  });
}

function nextStep(verdict: Verdict, check: ChargeCheck, targetF: number): string | null {
  if (!check.steady) return "Read again after steady running.";
  if (verdict === "meets") return null;
  const miss = check.measured - targetF;
  if (verdict === "can't tell") {
    const needed = Math.abs(check.tolerance - Math.abs(miss));
    // Below what the refrigerant table itself leaves open, no instrument helps.
    if (needed <= Math.max(check.model, 0.1))
      return "Too close to the limit for any gauge: weigh the charge.";
    const instrument = Math.sqrt(needed ** 2 - check.model ** 2);
    return `A gauge and probe that together leave no more than ±${(Math.floor(instrument * 10) / 10).toFixed(1)} °F would settle it.`;
  }
  const undercharged = (check.name === "Superheat") === miss > 0;
  return undercharged
    ? "Check airflow and filter first; then look for low charge, a leak or a restriction."
    : "Check airflow and filter first; then look for overcharge or a metering device that feeds too much or too little.";
}

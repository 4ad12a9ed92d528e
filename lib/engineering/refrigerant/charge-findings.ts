import { OutOfRangeError } from "../errors";
import { type Finding, finding, notMeasured } from "../findings";
import type { LimitValues } from "../limit-definition";
import { subcoolingF, superheatF } from "./charge";
import { subcoolingTarget, superheatTarget } from "./charge-targets";
import { chargeVerdict } from "./charge-verdict";
import { absolutePressurePsia } from "./gauge";
import type { refrigerantLimits } from "./limits";
import { refrigerantRules } from "./rules";
import { type Refrigerant, saturationTempUncertaintyF } from "./saturation";

/** Readings for judging the charge. `null`: not given. Uncertainties are expanded (k = 2). */
export type ChargeReadings = {
  readonly refrigerant: Refrigerant | null;
  readonly meteringDevice: "fixed orifice" | "expansion valve" | null;
  readonly sitePressurePsia: number | null;
  readonly suctionPressurePsig: number | null;
  readonly suctionLineF: number | null;
  readonly liquidPressurePsig: number | null;
  readonly liquidLineF: number | null;
  readonly indoorWetBulbF: number | null;
  readonly outdoorDryBulbF: number | null;
  readonly makerSuperheatF: number | null;
  readonly makerSubcoolingF: number | null;
  readonly steadyMinutes: number | null;
  /** What the gauge and the clamp probe together leave open, °F. */
  readonly superheatUncertaintyF: number | null;
  readonly subcoolingUncertaintyF: number | null;
};

type Limits = LimitValues<typeof refrigerantLimits>;

/**
 * Judges superheat and subcooling against their targets, and whether the system ran long enough to be judged.
 *
 * The maker's target wins. Without one, a fixed orifice takes its target from the charging formula; an expansion
 * valve has no superheat target and needs the maker's subcooling.
 *
 * @param readings - Gauge pressures psig, temperatures °F, minutes; `null` where not given.
 * @param limits - The company limits in force.
 * @returns Three findings: steady running, superheat, subcooling.
 * @throws {@link OutOfRangeError} for a reading outside its range or the saturation table, naming it.
 * @see Charging formula and maker's targets; tolerances from memory (recalled). Each rule of this folder names its source.
 */
export function chargeFindings(readings: ChargeReadings, limits: Limits): readonly Finding[] {
  const stabilized = stabilizedFinding(readings.steadyMinutes, limits["refrigerant.stabilizeMinutes"]);
  const steady = stabilized.verdict === "meets";
  return [
    stabilized,
    superheatFinding(readings, limits, steady),
    subcoolingFinding(readings, limits, steady),
  ];
}

function stabilizedFinding(minutes: number | null, least: number): Finding {
  const rule = refrigerantRules.stabilized;
  if (minutes === null) {
    return notMeasured(rule, ["steadyMinutes"], "Enter how long the system ran without a change of stage.");
  }
  if (!(minutes >= 0 && minutes <= 1_440))
    throw new OutOfRangeError("steadyMinutes", minutes, "min", 0, 1_440);
  const meets = minutes >= least;
  return finding(rule, {
    verdict: meets ? "meets" : "falls short",
    statement: `The system had run ${minutes.toFixed(0)} min when it was read; at least ${least.toFixed(0)} min is needed.`,
    figures: [{ label: "steady running", value: minutes, unit: "min", decimals: 0 }],
    nextStep: meets ? null : `Let it run ${(least - minutes).toFixed(0)} min more, then read again.`,
    inputs: ["steadyMinutes"],
  });
}

function superheatFinding(readings: ChargeReadings, limits: Limits, steady: boolean): Finding {
  const rule = refrigerantRules.superheat;
  const { refrigerant, suctionPressurePsig, suctionLineF, sitePressurePsia } = readings;
  const inputs = ["refrigerant", "suctionPressurePsig", "suctionLineF", "sitePressurePsia"];
  if (
    refrigerant === null ||
    suctionPressurePsig === null ||
    suctionLineF === null ||
    sitePressurePsia === null
  ) {
    return notMeasured(
      rule,
      missingOf(readings, inputs),
      "Read suction pressure and suction line temperature.",
    );
  }
  const measured = superheatF({ refrigerant, suctionPressurePsig, suctionLineF, sitePressurePsia });
  const model = saturationTempUncertaintyF(
    refrigerant,
    absolutePressurePsia(suctionPressurePsig, sitePressurePsia),
    "dew",
  );
  return chargeVerdict({
    rule,
    name: "Superheat",
    measured,
    model,
    instrument: uncertainty("superheatUncertaintyF", readings.superheatUncertaintyF),
    target: superheatTarget(readings),
    tolerance: limits["refrigerant.superheatTolerance"],
    steady,
    inputs,
  });
}

function subcoolingFinding(readings: ChargeReadings, limits: Limits, steady: boolean): Finding {
  const rule = refrigerantRules.subcooling;
  const { refrigerant, liquidPressurePsig, liquidLineF, sitePressurePsia } = readings;
  const inputs = ["refrigerant", "liquidPressurePsig", "liquidLineF", "sitePressurePsia"];
  if (
    refrigerant === null ||
    liquidPressurePsig === null ||
    liquidLineF === null ||
    sitePressurePsia === null
  ) {
    return notMeasured(
      rule,
      missingOf(readings, inputs),
      "Read liquid pressure and liquid line temperature.",
    );
  }
  const measured = subcoolingF({ refrigerant, liquidPressurePsig, liquidLineF, sitePressurePsia });
  const model = saturationTempUncertaintyF(
    refrigerant,
    absolutePressurePsia(liquidPressurePsig, sitePressurePsia),
    "bubble",
  );
  return chargeVerdict({
    rule,
    name: "Subcooling",
    measured,
    model,
    instrument: uncertainty("subcoolingUncertaintyF", readings.subcoolingUncertaintyF),
    target: subcoolingTarget(readings),
    tolerance: limits["refrigerant.subcoolingTolerance"],
    steady,
    inputs,
  });
}

function uncertainty(field: string, value: number | null): number | null {
  if (value !== null && !(value >= 0 && value <= 50)) throw new OutOfRangeError(field, value, "Δ°F", 0, 50);
  return value;
}

function missingOf(readings: ChargeReadings, fields: readonly string[]): readonly string[] {
  return fields.filter((field) => readings[field as keyof ChargeReadings] === null);
}

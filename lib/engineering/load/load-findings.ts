import { moistAir, standardPressurePsia } from "../air";
import { type Finding, finding, notMeasured } from "../findings";
import type { LimitValues } from "../limit-definition";
import { cfm } from "../units";
import { checkReadings } from "./check-readings";
import { leakageAreaIn2 } from "./leakage";
import type { loadLimits } from "./limits";
import { loadTotals } from "./load-totals";
import { type OutdoorAirLoad, outdoorAirLoad } from "./outdoor-air";
import { findAverageLeakageCfm } from "./padding-effects";
import { paddingFindings } from "./padding-findings";
import { btuhText, type LoadReadings, missingOf } from "./readings";
import { loadRules } from "./rules";
import { ventilationNeedCfm } from "./ventilation";

type Limits = LimitValues<typeof loadLimits>;

/**
 * Everything the load summary says: totals, outdoor air for the people and what it costs, leakage, padding.
 *
 * @param readings - The load summary and the weather's own design values; `null` where not given.
 * @param limits - The company limits in force.
 * @returns Findings. Totals, outdoor-air load and leakage are for information.
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} for values that cannot be, naming them.
 * @see ASHRAE 62.2-2013 for the ventilation need (published); each rule of this folder names its own source.
 */
export function loadFindings(readings: LoadReadings, limits: Limits): readonly Finding[] {
  checkReadings(readings);
  return [
    totalsFinding(readings),
    ...latentFindings(readings),
    ventilationFinding(readings, limits),
    outdoorAirFinding(readings),
    leakageFinding(readings),
    ...paddingFindings(readings, limits),
  ];
}

function totalsFinding(readings: LoadReadings): Finding {
  const rule = loadRules.totals;
  const { sensibleCoolingBtuh, latentCoolingBtuh, floorAreaFt2 } = readings;
  const inputs = ["sensibleCoolingBtuh", "latentCoolingBtuh", "floorAreaFt2"] as const;
  if (sensibleCoolingBtuh === null || latentCoolingBtuh === null || floorAreaFt2 === null) {
    return notMeasured(rule, missingOf(readings, inputs), "Enter the designer's load and the floor area.");
  }
  const totals = loadTotals({ sensibleCoolingBtuh, latentCoolingBtuh, floorAreaFt2 });
  return finding(rule, {
    verdict: null,
    statement: `The cooling load is ${btuhText(totals.totalBtuh)} (${totals.tons.toFixed(2)} tons), ${totals.sensibleRatio.toFixed(2)} of it sensible; ${totals.floorAreaPerTonFt2.toFixed(0)} ft² to the ton, for information.`,
    figures: [
      { label: "total", value: totals.totalBtuh, unit: "Btu/h", decimals: 0 },
      { label: "sensible ratio", value: totals.sensibleRatio, unit: "ratio", decimals: 2 },
      { label: "floor area per ton", value: totals.floorAreaPerTonFt2, unit: "ft²/ton", decimals: 0 },
    ],
    inputs,
  });
}

/** Only where it is so: a report prints the total beside the sensible load, and the total is easily taken for the latent. */
function latentFindings({ sensibleCoolingBtuh, latentCoolingBtuh }: LoadReadings): readonly Finding[] {
  if (sensibleCoolingBtuh === null || latentCoolingBtuh === null) return [];
  if (latentCoolingBtuh <= sensibleCoolingBtuh) return [];
  return [
    finding(loadRules.latentAboveSensible, {
      verdict: "can't tell",
      statement: `Latent ${btuhText(latentCoolingBtuh)} is more than sensible ${btuhText(sensibleCoolingBtuh)}: what follows rests on it and cannot be trusted yet.`,
      figures: [
        { label: "latent", value: latentCoolingBtuh, unit: "Btu/h", decimals: 0 },
        { label: "sensible", value: sensibleCoolingBtuh, unit: "Btu/h", decimals: 0 },
      ],
      nextStep: `Look at the report again. If ${btuhText(latentCoolingBtuh)} is its total, the latent cooling load is ${btuhText(latentCoolingBtuh - sensibleCoolingBtuh)}, total less sensible; or the two are swapped.`,
      inputs: ["latentCoolingBtuh", "sensibleCoolingBtuh"],
    }),
  ];
}

function ventilationFinding(readings: LoadReadings, limits: Limits): Finding {
  const rule = loadRules.ventilation;
  const { floorAreaFt2, bedrooms, ventilationCfm } = readings;
  const inputs = ["floorAreaFt2", "bedrooms", "ventilationCfm"] as const;
  if (floorAreaFt2 === null || bedrooms === null || ventilationCfm === null) {
    return notMeasured(
      rule,
      missingOf(readings, inputs),
      "Enter floor area, bedrooms and the mechanical outdoor air (0 when there is none).",
    );
  }
  const need = ventilationNeedCfm({ floorAreaFt2, bedrooms });
  const fan = cfm(ventilationCfm);
  // Only leakage that was measured may be credited.
  const leaked = readings.leakageKnownBy === "measured" ? findAverageLeakageCfm(readings) : null;
  const credit = leaked ?? 0;
  const mostCredit = (need * limits["load.infiltrationCreditMostShare"]) / 100;
  const capped = Math.min(credit, mostCredit);
  // The cap is from memory: it may leave the question open, never fail the job by itself.
  const verdict = fan + capped >= need ? "meets" : fan + credit >= need ? "can't tell" : "falls short";
  const creditText =
    leaked === null
      ? "no credit for leakage, as it is not measured"
      : `a credit of ${capped.toFixed(1)} cfm for measured leakage`;
  return finding(rule, {
    verdict,
    statement: `The house needs ${need.toFixed(1)} cfm of outdoor air; ${fan.toFixed(1)} cfm is mechanical, with ${creditText}.`,
    figures: [
      { label: "need", value: need, unit: "cfm", decimals: 1 },
      { label: "leakage credit", value: capped, unit: "cfm", decimals: 1 },
      { label: "mechanical", value: fan, unit: "cfm", decimals: 1 },
    ],
    nextStep:
      verdict === "meets"
        ? null
        : verdict === "can't tell"
          ? "The limit on the credit decides: verify it in the edition of the standard in force."
          : `Raise the mechanical outdoor air by ${(need - fan - credit).toFixed(1)} cfm.`,
    inputs,
  });
}

function outdoorAirFinding(readings: LoadReadings): Finding {
  const rule = loadRules.outdoorAir;
  const { ventilationCfm, indoorCoolingDbF, indoorCoolingRhPct, outdoorCoolingDbF, outdoorCoolingWbF } =
    readings;
  const { elevationFt, wetMildDbF, wetMildDewPointF } = readings;
  const inputs = [
    "ventilationCfm",
    "elevationFt",
    "indoorCoolingDbF",
    "indoorCoolingRhPct",
    "outdoorCoolingDbF",
    "outdoorCoolingWbF",
    "wetMildDbF",
    "wetMildDewPointF",
  ] as const;
  if (
    ventilationCfm === null ||
    elevationFt === null ||
    indoorCoolingDbF === null ||
    indoorCoolingRhPct === null ||
    outdoorCoolingDbF === null ||
    outdoorCoolingWbF === null ||
    wetMildDbF === null ||
    wetMildDewPointF === null
  ) {
    return notMeasured(
      rule,
      missingOf(readings, inputs),
      "Enter the outdoor air and both design conditions, hot and wet.",
    );
  }
  const pressurePsia = standardPressurePsia(elevationFt);
  const indoor = moistAir({
    dryBulbF: indoorCoolingDbF,
    relativeHumidityPct: indoorCoolingRhPct,
    pressurePsia,
  });
  const hot = outdoorAirLoad({
    airflowCfm: ventilationCfm,
    outdoor: moistAir({ dryBulbF: outdoorCoolingDbF, wetBulbF: outdoorCoolingWbF, pressurePsia }),
    indoor,
  });
  const wet = outdoorAirLoad({
    airflowCfm: ventilationCfm,
    outdoor: moistAir({ dryBulbF: wetMildDbF, dewPointF: wetMildDewPointF, pressurePsia }),
    indoor,
  });
  return finding(rule, {
    verdict: null,
    statement: `${ventilationCfm.toFixed(0)} cfm of outdoor air brings ${splitText(hot)} on the design day, and ${splitText(wet)} in wet, mild weather, when cooling may not run.`,
    figures: [
      { label: "total, design day", value: hot.totalBtuh, unit: "Btu/h", decimals: 0 },
      { label: "water, design day", value: hot.moistureLbPerH, unit: "lb/h", decimals: 2 },
      { label: "total, wet and mild", value: wet.totalBtuh, unit: "Btu/h", decimals: 0 },
      { label: "water, wet and mild", value: wet.moistureLbPerH, unit: "lb/h", decimals: 2 },
    ],
    inputs,
  });
}

function splitText(load: OutdoorAirLoad): string {
  return `${btuhText(load.sensibleBtuh)} sensible and ${btuhText(load.latentBtuh)} latent (${load.moistureLbPerH.toFixed(2)} lb/h of water)`;
}

function leakageFinding(readings: LoadReadings): Finding {
  const rule = loadRules.leakage;
  const { leakageCfm50 } = readings;
  if (leakageCfm50 === null) return notMeasured(rule, ["leakageCfm50"], "Test the house with a blower door.");
  const areaIn2 = leakageAreaIn2({ leakageCfm50 });
  const average = findAverageLeakageCfm(readings);
  return finding(rule, {
    verdict: null,
    statement: `${Math.round(leakageCfm50).toLocaleString("en-US")} cfm at 50 Pa is a leakage area of ${areaIn2.toFixed(0)} in²${average === null ? "" : ` and lets in about ${average.toFixed(0)} cfm over the year`}.`,
    figures: [
      { label: "leakage area", value: areaIn2, unit: "in²", decimals: 0 },
      ...(average === null ? [] : [{ label: "average leakage", value: average, unit: "cfm", decimals: 0 }]),
    ],
    inputs: ["leakageCfm50"],
  });
}

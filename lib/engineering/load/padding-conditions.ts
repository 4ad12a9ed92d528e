import { type Finding, finding, notMeasured, type Rule } from "../findings";
import type { LimitValues } from "../limit-definition";
import type { loadLimits } from "./limits";
import { findHeatLossPerF, findHumidityEffectBtuh } from "./padding-effects";
import { btuhText, type LoadReadings, missingOf } from "./readings";
import { loadRules } from "./rules";

type Limits = LimitValues<typeof loadLimits>;

/** A finding of the padding check with what its deviation adds to each load, Btu/h; `null`: not known. */
export type PaddingCheck = {
  readonly finding: Finding;
  readonly coolingEffectBtuh: number | null;
  readonly heatingEffectBtuh: number | null;
};

/**
 * The five design conditions, each against what the house will see.
 *
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} for inputs that cannot be, naming the field.
 */
export function conditionChecks(readings: LoadReadings, limits: Limits): readonly PaddingCheck[] {
  const perF = findHeatLossPerF(readings);
  return [
    temperatureCheck({
      rule: loadRules.indoorCooling,
      readings,
      fields: ["indoorCoolingDbF"],
      wanted: limits["load.indoorCoolingDb"],
      tolerance: limits["load.indoorTolerance"],
      from: "the rule",
      perF: perF === null ? null : -perF,
      season: "cooling",
    }),
    humidityCheck(readings, limits),
    temperatureCheck({
      rule: loadRules.outdoorCooling,
      readings,
      fields: ["outdoorCoolingDbF", "weatherCoolingDbF"],
      wanted: readings.weatherCoolingDbF,
      tolerance: limits["load.outdoorCoolingTolerance"],
      from: "the weather file",
      perF,
      season: "cooling",
    }),
    temperatureCheck({
      rule: loadRules.indoorHeating,
      readings,
      fields: ["indoorHeatingDbF"],
      wanted: limits["load.indoorHeatingDb"],
      tolerance: limits["load.indoorTolerance"],
      from: "the rule",
      perF,
      season: "heating",
    }),
    temperatureCheck({
      rule: loadRules.outdoorHeating,
      readings,
      fields: ["outdoorHeatingDbF", "weatherHeatingDbF"],
      wanted: readings.weatherHeatingDbF,
      tolerance: limits["load.outdoorHeatingTolerance"],
      from: "the weather file",
      perF: perF === null ? null : -perF,
      season: "heating",
    }),
  ];
}

type TemperatureField =
  | "indoorCoolingDbF"
  | "indoorHeatingDbF"
  | "outdoorCoolingDbF"
  | "outdoorHeatingDbF"
  | "weatherCoolingDbF"
  | "weatherHeatingDbF";

function temperatureCheck(check: {
  readonly rule: Rule;
  readonly readings: LoadReadings;
  /** The design value, and where it is compared with a reading, that reading. */
  readonly fields: readonly [TemperatureField, ...TemperatureField[]];
  readonly wanted: number | null;
  readonly tolerance: number;
  readonly from: string;
  /** Load added by each °F that the design value lies above the wanted one, Btu/h. */
  readonly perF: number | null;
  readonly season: "cooling" | "heating";
}): PaddingCheck {
  const [field] = check.fields;
  const given = check.readings[field];
  if (given === null || check.wanted === null) {
    const missing = missingOf(check.readings, check.fields);
    return {
      finding: notMeasured(
        check.rule,
        missing,
        "Enter the design temperature the load was made for, and choose the weather file.",
      ),
      coolingEffectBtuh: check.season === "cooling" ? null : 0,
      heatingEffectBtuh: check.season === "heating" ? null : 0,
    };
  }
  const design = given;
  const wanted = check.wanted;
  const deviation = design - wanted;
  const meets = Math.abs(deviation) <= check.tolerance;
  const effect = check.perF === null ? null : deviation * check.perF;
  const compared = `${check.rule.title} is ${design.toFixed(1)} °F; ${check.from} has ${wanted.toFixed(1)} °F, ± ${check.tolerance.toFixed(1)} °F is not counted.`;
  return {
    finding: finding(check.rule, {
      verdict: meets ? "meets" : "falls short",
      statement: `${compared}${meets ? "" : ` ${effectText(effect, `${check.season} load`)}`}`,
      figures: [
        { label: "design", value: design, unit: "°F", decimals: 1 },
        ...(effect === null
          ? []
          : [{ label: `effect on the ${check.season} load`, value: effect, unit: "Btu/h", decimals: 0 }]),
      ],
      nextStep: meets ? null : "Ask the designer why, or have the load made again at the usual conditions.",
      inputs: check.fields,
    }),
    coolingEffectBtuh: check.season === "heating" || meets ? 0 : effect,
    heatingEffectBtuh: check.season === "cooling" || meets ? 0 : effect,
  };
}

function humidityCheck(readings: LoadReadings, limits: Limits): PaddingCheck {
  const rule = loadRules.indoorHumidity;
  const { indoorCoolingRhPct, indoorCoolingDbF } = readings;
  if (indoorCoolingRhPct === null) {
    return {
      finding: notMeasured(rule, ["indoorCoolingRhPct"], "Enter the indoor humidity the load was made for."),
      coolingEffectBtuh: null,
      heatingEffectBtuh: 0,
    };
  }
  const design = indoorCoolingRhPct;
  const wanted = limits["load.indoorCoolingRh"];
  const meets = Math.abs(design - wanted) <= limits["load.humidityTolerance"];
  const effect =
    indoorCoolingDbF === null ? null : findHumidityEffectBtuh(readings, indoorCoolingDbF, design, wanted);
  return {
    finding: finding(rule, {
      verdict: meets ? "meets" : "falls short",
      statement: `Indoor design humidity is ${design.toFixed(0)} %; the rule has ${wanted.toFixed(0)} %, ± ${limits["load.humidityTolerance"].toFixed(0)} % is not counted.${meets ? "" : ` ${effectText(effect, "latent load")}`}`,
      figures: [
        { label: "design", value: design, unit: "%", decimals: 0 },
        ...(effect === null
          ? []
          : [{ label: "effect on the latent load", value: effect, unit: "Btu/h", decimals: 0 }]),
      ],
      nextStep: meets ? null : "Ask the designer why, or have the load made again at the usual conditions.",
      inputs: ["indoorCoolingRhPct"],
    }),
    coolingEffectBtuh: meets ? 0 : effect,
    heatingEffectBtuh: 0,
  };
}

/** "It adds about 1,200 Btu/h to the cooling load." */
function effectText(effect: number | null, load: string): string {
  if (effect === null) return `What that does to the ${load} cannot be said from what is entered.`;
  return effect >= 0
    ? `It adds about ${btuhText(effect)} to the ${load}.`
    : `It takes about ${btuhText(-effect)} from the ${load}.`;
}

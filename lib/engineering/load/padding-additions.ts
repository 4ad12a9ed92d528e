import { type Finding, finding, notMeasured, type Rule } from "../findings";
import type { PaddingCheck } from "./padding-conditions";
import { findLeakageLoadBtuh } from "./padding-effects";
import { btuhText, type LoadReadings, missingOf } from "./readings";
import { loadRules } from "./rules";

/**
 * What was put on top of the house as it is: guessed leakage, duct gain, double counting, safety factors.
 *
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} for inputs that cannot be, naming the field.
 */
export function additionChecks(readings: LoadReadings): readonly PaddingCheck[] {
  return [leakageCheck(readings), ductCheck(readings), duplicateCheck(readings), safetyFactorCheck(readings)];
}

function leakageCheck(readings: LoadReadings): PaddingCheck {
  const rule = loadRules.leakageKnown;
  const { leakageKnownBy, leakageCfm50 } = readings;
  const inputs = ["leakageKnownBy", "leakageCfm50"] as const;
  if (leakageKnownBy === null || leakageCfm50 === null) {
    return open(
      notMeasured(
        rule,
        missingOf(readings, inputs),
        "Test the house with a blower door, or say what was assumed.",
      ),
    );
  }
  const leakage = `${Math.round(leakageCfm50).toLocaleString("en-US")} cfm at 50 Pa`;
  const carried = findLeakageLoadBtuh(readings);
  const figures =
    carried === null
      ? []
      : [{ label: "cooling load carried by the leaks", value: carried, unit: "Btu/h", decimals: 0 }];
  if (leakageKnownBy === "measured") {
    return {
      finding: finding(rule, {
        verdict: "meets",
        statement: `Leakage was measured: ${leakage}.`,
        figures,
        inputs,
      }),
      coolingEffectBtuh: 0,
      heatingEffectBtuh: 0,
    };
  }
  const weight =
    carried === null
      ? ""
      : ` On average it carries about ${btuhText(carried)} of the cooling load, right or wrong.`;
  return {
    finding: finding(rule, {
      verdict: "can't tell",
      statement: `Leakage of ${leakage} is assumed, not measured.${weight}`,
      figures,
      nextStep: "Test the house with a blower door and have the load made again with the result.",
      inputs,
    }),
    coolingEffectBtuh: null,
    heatingEffectBtuh: null,
  };
}

function ductCheck(readings: LoadReadings): PaddingCheck {
  const rule = loadRules.ducts;
  const { ductsInside, ductLoadBtuh } = readings;
  const inputs = ["ductsInside", "ductLoadBtuh"] as const;
  if (ductsInside === null || ductLoadBtuh === null) {
    return open(
      notMeasured(
        rule,
        missingOf(readings, inputs),
        "Enter where the ducts run and the duct gain in the load.",
      ),
    );
  }
  const padded = ductsInside && ductLoadBtuh > 0;
  const place = ductsInside ? "inside" : "outside";
  return {
    finding: finding(rule, {
      verdict: padded ? "falls short" : "meets",
      statement: `The ducts run ${place} the insulated space and the load holds ${btuhText(ductLoadBtuh)} of duct gain.`,
      figures: [{ label: "duct gain", value: ductLoadBtuh, unit: "Btu/h", decimals: 0 }],
      nextStep: padded ? "Have the load made again without duct gain, or correct where the ducts run." : null,
      inputs,
    }),
    coolingEffectBtuh: padded ? ductLoadBtuh : 0,
    heatingEffectBtuh: 0,
  };
}

function duplicateCheck(readings: LoadReadings): PaddingCheck {
  const rule = loadRules.duplicates;
  if (readings.duplicatedGainsBtuh === null) {
    return open(
      notMeasured(
        rule,
        ["duplicatedGainsBtuh"],
        "Look for people, appliances or outdoor air counted twice; enter 0 when there are none.",
      ),
    );
  }
  const gain = readings.duplicatedGainsBtuh;
  return added(
    rule,
    gain,
    `Gains of ${btuhText(gain)} are counted twice.`,
    "No gain is counted twice.",
    "duplicatedGainsBtuh",
    "Have the load made again with each gain once.",
  );
}

function safetyFactorCheck(readings: LoadReadings): PaddingCheck {
  const rule = loadRules.safetyFactor;
  if (readings.safetyFactorPct === null) {
    return open(
      notMeasured(rule, ["safetyFactorPct"], "Enter the factor the designer added; 0 when there is none."),
    );
  }
  const share = readings.safetyFactorPct / 100;
  const { sensibleCoolingBtuh, latentCoolingBtuh } = readings;
  const total =
    sensibleCoolingBtuh === null || latentCoolingBtuh === null
      ? null
      : sensibleCoolingBtuh + latentCoolingBtuh;
  if (share > 0 && total === null) {
    return open(
      finding(rule, {
        verdict: "falls short",
        statement: `A safety factor of ${(100 * share).toFixed(0)} % was added; without the loads its effect cannot be said.`,
        nextStep: "Enter the sensible and latent load.",
        inputs: ["safetyFactorPct", ...missingOf(readings, ["sensibleCoolingBtuh", "latentCoolingBtuh"])],
      }),
    );
  }
  // What the load holds of a factor s that was put on it: s / (1 + s) of it.
  const held = share / (1 + share);
  const effect = share === 0 ? 0 : (total ?? 0) * held;
  const said = added(
    rule,
    effect,
    `A safety factor of ${(100 * share).toFixed(0)} % adds ${btuhText(effect)} to the cooling load.`,
    "No safety factor was added.",
    "safetyFactorPct",
    "Take the factor off: the equipment step has its own sizing range.",
  );
  const { heatingBtuh } = readings;
  return {
    ...said,
    heatingEffectBtuh: share === 0 ? 0 : heatingBtuh === null ? null : heatingBtuh * held,
  };
}

function added(
  rule: Rule,
  effectBtuh: number,
  padded: string,
  clean: string,
  field: keyof LoadReadings,
  nextStep: string,
): PaddingCheck {
  const isPadded = effectBtuh > 0;
  return {
    finding: finding(rule, {
      verdict: isPadded ? "falls short" : "meets",
      statement: isPadded ? padded : clean,
      figures: [{ label: "effect on the cooling load", value: effectBtuh, unit: "Btu/h", decimals: 0 }],
      nextStep: isPadded ? nextStep : null,
      inputs: [field],
    }),
    coolingEffectBtuh: effectBtuh,
    heatingEffectBtuh: 0,
  };
}

function open(said: Finding): PaddingCheck {
  return { finding: said, coolingEffectBtuh: null, heatingEffectBtuh: null };
}

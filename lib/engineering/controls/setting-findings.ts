import { type Finding, notMeasured } from "../findings";
import { type AskedWithAfternoon, consequenceOf, withAfternoon } from "./consequences";
import { fanBetweenCalls, fanRunOn } from "./fan-findings";
import type { ControlFindingsInput } from "./input";
import { judged, offset, time } from "./judged-setting";
import { controlsRules } from "./rules";

/**
 * Each setting against the company's limits, with what it does to this house.
 *
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} for inputs that cannot be, naming the field.
 */
export function settingFindings(given: ControlFindingsInput): readonly Finding[] {
  const input = withAfternoon(given);
  const twoStage = (input.equipmentStages ?? input.house?.stages.length ?? 2) === 2;
  return [
    firstStageStart(input),
    ...(twoStage ? [secondStageStart(input), stepBack(input)] : []),
    minimumRun(input),
    minimumRest(input),
    fanRunOn(input),
    coolingPastSetpoint(input),
    fanBetweenCalls(input),
  ];
}

function firstStageStart(input: AskedWithAfternoon): Finding {
  const rule = controlsRules.firstStageStartOffset;
  const set = input.settings.firstStageStartOffsetF;
  if (set === null) {
    return notMeasured(rule, ["firstStageStartOffsetF"], "Enter how far above setpoint cooling starts.");
  }
  const min = input.limits["controls.firstStageStartOffsetMinF"];
  const max = input.limits["controls.firstStageStartOffsetMaxF"];
  const good = set >= min && set <= max;
  // A good setting is shown against half of it: what a narrow band would do.
  const other = set < min ? min : set > max ? max : set / 2;
  return judged(rule, {
    field: "firstStageStartOffsetF",
    good,
    words: `Cooling starts ${set.toFixed(1)} °F above setpoint; ${min.toFixed(1)} to ${max.toFixed(1)} °F is the practice`,
    figures: [offset("first-stage start offset", set)],
    effect: consequenceOf(input, { firstStageStartOffsetF: other }, `with ${other.toFixed(1)} °F`),
    nextStep: `Set the first-stage start offset to ${other.toFixed(1)} °F.`,
  });
}

function secondStageStart(input: AskedWithAfternoon): Finding {
  const rule = controlsRules.secondStageStartOffset;
  const { firstStageStartOffsetF: first, secondStageStartOffsetF: set } = input.settings;
  if (first === null || set === null) {
    const missing = [
      ...(first === null ? ["firstStageStartOffsetF"] : []),
      ...(set === null ? ["secondStageStartOffsetF"] : []),
    ];
    return notMeasured(rule, missing, "Enter how far above setpoint each stage starts.");
  }
  const least = first + input.limits["controls.secondBeyondFirstMinF"];
  const most = Math.max(least, input.limits["controls.secondStageStartOffsetUsualF"]);
  const other = set < least ? least : set > most ? most : first;
  return judged(rule, {
    field: "secondStageStartOffsetF",
    good: set >= least && set <= most,
    words: `The second stage joins ${set.toFixed(1)} °F above setpoint, ${(set - first).toFixed(1)} °F beyond the first; ${least === most ? "" : `${least.toFixed(1)} to `}${most.toFixed(1)} °F is the practice${set > most ? " and more risks comfort" : ""}`,
    figures: [offset("second-stage start offset", set), offset("beyond the first stage", set - first)],
    effect: consequenceOf(input, { secondStageStartOffsetF: other }, `with ${other.toFixed(1)} °F`),
    nextStep: `Set the second-stage start offset to ${other.toFixed(1)} °F.`,
  });
}

function stepBack(input: AskedWithAfternoon): Finding {
  const rule = controlsRules.stepBack;
  const set = input.settings.stepBackToFirstStage;
  if (set === null) {
    return notMeasured(rule, ["stepBackToFirstStage"], "Enter whether the second stage steps back.");
  }
  const expected = input.limits["controls.stepBackExpected"] >= 0.5;
  return judged(rule, {
    field: "stepBackToFirstStage",
    good: set === expected,
    words: `Step back to first stage is ${onOff(set)}; ${onOff(expected)} is the practice`,
    figures: [],
    effect: consequenceOf(input, { stepBackToFirstStage: !set }, `${onOff(!set)}`),
    nextStep: `Turn step back to first stage ${onOff(expected)}.`,
  });
}

function minimumRun(input: AskedWithAfternoon): Finding {
  const rule = controlsRules.minimumRun;
  const set = input.settings.minimumCompressorRunMin;
  if (set === null)
    return notMeasured(rule, ["minimumCompressorRunMin"], "Enter the shortest compressor run.");
  const min = input.limits["controls.minimumCompressorRunMin"];
  const other = set < min ? min : 0;
  return judged(rule, {
    field: "minimumCompressorRunMin",
    good: set >= min,
    words: `The compressor runs at least ${set.toFixed(0)} min; ${min.toFixed(0)} min or more is the practice`,
    figures: [time("minimum compressor run", set, "min")],
    effect: consequenceOf(input, { minimumCompressorRunMin: other }, `with ${other.toFixed(0)} min`),
    nextStep: `Set the minimum compressor run to ${min.toFixed(0)} min.`,
  });
}

function minimumRest(input: AskedWithAfternoon): Finding {
  const rule = controlsRules.minimumRest;
  const set = input.settings.minimumCompressorRestMin;
  if (set === null)
    return notMeasured(rule, ["minimumCompressorRestMin"], "Enter the shortest compressor rest.");
  const min = input.limits["controls.minimumCompressorRestMin"];
  const other = set < min ? min : 0;
  return judged(rule, {
    field: "minimumCompressorRestMin",
    good: set >= min,
    words: `The compressor rests at least ${set.toFixed(0)} min; ${min.toFixed(0)} min or more is the practice`,
    figures: [time("minimum compressor rest", set, "min")],
    effect: consequenceOf(input, { minimumCompressorRestMin: other }, `with ${other.toFixed(0)} min`),
    nextStep: `Set the minimum compressor rest to ${min.toFixed(0)} min, or the maker's longer one.`,
  });
}

function coolingPastSetpoint(input: AskedWithAfternoon): Finding {
  const rule = controlsRules.coolingPastSetpoint;
  const set = input.settings.coolingPastSetpointF;
  if (set === null) {
    return notMeasured(
      rule,
      ["coolingPastSetpointF"],
      "Enter how far below setpoint cooling may go on (0 = off).",
    );
  }
  const max = input.limits["controls.coolingPastSetpointMaxF"];
  const other = set > max ? max : set > 0 ? 0 : 1;
  return judged(rule, {
    field: "coolingPastSetpointF",
    good: set <= max,
    words: `Cooling may go ${set.toFixed(1)} °F past the setpoint; at most ${max.toFixed(1)} °F is the practice`,
    figures: [offset("cooling past setpoint", set)],
    effect: consequenceOf(input, { coolingPastSetpointF: other }, `with ${other.toFixed(1)} °F`),
    nextStep: `Set cooling past setpoint to ${max.toFixed(1)} °F.`,
  });
}

const onOff = (value: boolean) => (value ? "on" : "off");

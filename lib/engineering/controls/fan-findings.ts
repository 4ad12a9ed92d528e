import { type Finding, notMeasured } from "../findings";
import { type AskedWithAfternoon, consequenceOf } from "./consequences";
import { judged, time } from "./judged-setting";
import { controlsRules } from "./rules";

/**
 * Fan run-on after cooling against the limit.
 *
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} for inputs that cannot be, naming the field.
 */
export function fanRunOn(input: AskedWithAfternoon): Finding {
  const rule = controlsRules.fanRunOn;
  const set = input.settings.fanRunOnAfterCoolingS;
  if (set === null)
    return notMeasured(rule, ["fanRunOnAfterCoolingS"], "Enter the fan run-on after cooling.");
  const max = input.limits["controls.fanRunOnMaxS"];
  // A good run-on of 0 is shown against a minute and a half, the usual factory length (practice).
  const other = set > max ? max : set > 0 ? 0 : 90;
  return judged(rule, {
    field: "fanRunOnAfterCoolingS",
    good: set <= max,
    words: `The fan runs on ${set.toFixed(0)} s after cooling; at most ${max.toFixed(0)} s is the practice, as the wet coil gives its water back`,
    figures: [time("fan run-on after cooling", set, "s")],
    effect: consequenceOf(input, { fanRunOnAfterCoolingS: other }, `with ${other.toFixed(0)} s`),
    nextStep: `Set the fan run-on after cooling to ${max.toFixed(0)} s.`,
  });
}

/**
 * Fan between calls against the limit.
 *
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} for inputs that cannot be, naming the field.
 */
export function fanBetweenCalls(input: AskedWithAfternoon): Finding {
  const rule = controlsRules.fanBetweenCalls;
  const { fanBetweenCalls: mode, fanBetweenCallsMinPerH: minutes } = input.settings;
  if (mode === null) return notMeasured(rule, ["fanBetweenCalls"], "Enter what the fan does between calls.");
  if (mode === "minutes per hour" && minutes === null) {
    return notMeasured(rule, ["fanBetweenCallsMinPerH"], "Enter the fan's minutes per hour.");
  }
  const max = input.limits["controls.fanBetweenCallsMaxMinPerH"];
  const set = mode === "on" ? 60 : mode === "off" ? 0 : (minutes ?? 0);
  const other =
    mode === "off"
      ? ({ fanBetweenCalls: "on", fanBetweenCallsMinPerH: null } as const)
      : ({ fanBetweenCalls: "off", fanBetweenCallsMinPerH: null } as const);
  return judged(rule, {
    field: "fanBetweenCalls",
    good: set <= max,
    words: `Between calls the fan runs ${set.toFixed(0)} min an hour; at most ${max.toFixed(0)} is the practice, as it dries the coil back into the house`,
    figures: [time("fan between calls", set, "min/h")],
    effect: consequenceOf(input, other, `with the fan ${other.fanBetweenCalls}`),
    nextStep:
      max === 0 ? "Turn the fan off between calls." : `Bring it down to ${max.toFixed(0)} min an hour.`,
  });
}

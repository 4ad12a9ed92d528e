import { isEngineeringError } from "../errors";
import type { Figure } from "../findings";
import { type ControlFindingsInput, wholeSettings } from "./input";
import type { ControlSettings } from "./settings";
import { thermostatTimeline } from "./thermostat-timeline";
import type { TimelineSummary } from "./timeline-summary";

/** What a setting does to this house: the afternoon as set, and with that one setting changed. */
export type Consequence = { readonly words: string; readonly figures: readonly Figure[] };

const NOTHING: Consequence = { words: "", figures: [] };

/**
 * The afternoon as set beside the same afternoon with one setting changed.
 *
 * @param changed - The setting in its other value.
 * @param otherwise - That other value in words, for the sentence ("with 0.5 °F").
 * @returns Words to append to a finding's sentence; empty when the house or a setting is not known yet.
 */
export function consequenceOf(
  input: ControlFindingsInput,
  changed: Partial<ControlSettings>,
  otherwise: string,
): Consequence {
  if (input.house === null) return NOTHING;
  const asSet = wholeSettings(input.settings, input.house.stages.length);
  if (asSet === null) return NOTHING;
  const before = summaryOf(input, asSet);
  const after = summaryOf(input, { ...asSet, ...changed });
  if (before === null || after === null) return NOTHING;
  return {
    words: `; in this house that afternoon gives ${inWords(before)}, ${otherwise} ${inWords(after)}`,
    figures: [...figuresOf(before, "as set"), ...figuresOf(after, otherwise)],
  };
}

/** Settings that contradict each other cannot be run; their contradiction is a finding of its own. */
function summaryOf(input: ControlFindingsInput, settings: ControlSettings): TimelineSummary | null {
  if (input.house === null) return null;
  try {
    return thermostatTimeline({ house: input.house, settings }).summary;
  } catch (error) {
    if (isEngineeringError(error)) return null;
    throw error;
  }
}

function inWords(summary: TimelineSummary): string {
  const cycles =
    summary.cyclesPerHour === null
      ? `${summary.starts} ${summary.starts === 1 ? "start" : "starts"}`
      : `${summary.cyclesPerHour.toFixed(1)} cycles an hour`;
  const run = summary.meanRunMin === null ? "" : ` with runs of ${summary.meanRunMin.toFixed(0)} min`;
  return `${cycles}${run} and ${summary.secondStageMin} second-stage min`;
}

function figuresOf(summary: TimelineSummary, when: string): readonly Figure[] {
  const figure = (label: string, value: number | null, unit: string, decimals: number): Figure[] =>
    value === null ? [] : [{ label: `${label}, ${when}`, value, unit, decimals }];
  return [
    ...figure("cycles", summary.cyclesPerHour, "per h", 1),
    ...figure("mean run", summary.meanRunMin, "min", 0),
    ...figure("second stage", summary.secondStageMin, "min", 0),
    ...figure("longest rest", summary.longestRestMin, "min", 0),
    ...figure("fan without cooling", summary.idleFanMin, "min", 0),
    ...figure("room at its warmest", summary.peakIndoorF, "°F", 1),
    ...figure("room at its coolest", summary.lowestIndoorF, "°F", 1),
    ...figure("water condensed", summary.condensedLb, "lb", 1),
  ];
}

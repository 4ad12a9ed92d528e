import { isEngineeringError } from "../errors";
import type { Figure } from "../findings";
import { latentRatio } from "../moisture";
import { type ControlFindingsInput, type WetCoil, wholeSettings } from "./input";
import type { ControlSettings } from "./settings";
import { thermostatTimeline } from "./thermostat-timeline";
import type { TimelineSummary } from "./timeline-summary";

/** What a setting does to this house: the afternoon as set, and with that one setting changed. */
export type Consequence = { readonly words: string; readonly figures: readonly Figure[] };

const NOTHING: Consequence = { words: "", figures: [] };

/** The input of the findings with its afternoon as set, which every consequence is held against and which is run only once. */
export type AskedWithAfternoon = ControlFindingsInput & {
  /** `null` when the house or a setting is not known yet, or the settings cannot be run. */
  readonly asSet: { readonly settings: ControlSettings; readonly summary: TimelineSummary } | null;
};

/**
 * Runs the afternoon as set.
 *
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} for inputs that cannot be, naming the field.
 */
export function withAfternoon(input: ControlFindingsInput): AskedWithAfternoon {
  const settings = input.house === null ? null : wholeSettings(input.settings, input.house.stages.length);
  const summary = settings === null ? null : summaryOf(input, settings);
  return { ...input, asSet: settings === null || summary === null ? null : { settings, summary } };
}

/**
 * The afternoon as set beside the same afternoon with one setting changed.
 *
 * @param changed - The setting in its other value.
 * @param otherwise - That other value in words, for the sentence ("with 0.5 °F").
 * @returns Words to append to a finding's sentence; empty when the house or a setting is not known yet.
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} for inputs that cannot be, naming the field.
 */
export function consequenceOf(
  input: AskedWithAfternoon,
  changed: Partial<ControlSettings>,
  otherwise: string,
): Consequence {
  const { house, asSet } = input;
  if (house === null || asSet === null) return NOTHING;
  const before = asSet.summary;
  const after = summaryOf(input, { ...asSet.settings, ...changed });
  if (after === null) return NOTHING;
  const hours = house.durationMin / 60;
  const given = (summary: TimelineSummary) => givenBackLbPerH(summary, input.coil ?? null, hours);
  const isSaid = [before, after].some((one) => one.idleFanMin > 0 && given(one) !== null);
  const knownBy = isSaid && input.coil ? ` (${input.coil.knownBy})` : "";
  return {
    words: `; in this house that afternoon gives ${inWords(before, given(before))}, ${otherwise} ${inWords(after, given(after))}${knownBy}`,
    figures: [...figuresOf(before, given(before), "as set"), ...figuresOf(after, given(after), otherwise)],
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

/**
 * Water the fan dries off the coil back into the house, averaged over the afternoon, lb/h. Null when the coil is not
 * known or the afternoon is not one of cycles. All fan time of a rest is taken to follow the compressor's stop, as the
 * coil keeps its water until the fan blows.
 *
 * @see Henderson & Rengarajan 1996, by the moisture module's `latentRatio` (published).
 */
function givenBackLbPerH(summary: TimelineSummary, coil: WetCoil | null, hours: number): number | null {
  if (coil === null) return null;
  if (summary.idleFanMin === 0) return 0;
  const runFraction = summary.coolingMin / (hours * 60);
  if (summary.cyclesPerHour === null || runFraction <= 0 || runFraction >= 1) return null;
  const rests = summary.cyclesPerHour * hours;
  try {
    const { timeConstantS, wetTimeS, gamma } = coil;
    const kept = latentRatio({
      timeConstantS,
      wetTimeS,
      gamma,
      maxCyclesPerH: summary.cyclesPerHour / (4 * runFraction * (1 - runFraction)),
      runFraction,
      fan: { kind: "runs on", runOnS: Math.min(3_600, (summary.idleFanMin * 60) / rests) },
    }).latentRatio;
    return (summary.condensedLb / hours) * (1 - kept);
  } catch (error) {
    if (isEngineeringError(error)) return null;
    throw error;
  }
}

function inWords(summary: TimelineSummary, givenBack: number | null): string {
  const cycles =
    summary.cyclesPerHour === null
      ? `${summary.starts} ${summary.starts === 1 ? "start" : "starts"}`
      : `${summary.cyclesPerHour.toFixed(1)} cycles an hour`;
  const run = summary.meanRunMin === null ? "" : ` with runs of ${summary.meanRunMin.toFixed(0)} min`;
  const water =
    givenBack === null || summary.idleFanMin === 0
      ? ""
      : `, ${givenBack.toFixed(2)} lb/h dried back off the coil`;
  return `${cycles}${run} and ${summary.secondStageMin} second-stage min${water}`;
}

function figuresOf(summary: TimelineSummary, givenBack: number | null, when: string): readonly Figure[] {
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
    ...figure("dried back off the coil", givenBack, "lb/h", 2),
    ...figure("water condensed", summary.condensedLb, "lb", 1),
  ];
}

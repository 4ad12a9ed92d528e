import { exp } from "../exact-functions";
import {
  type HouseAfternoon,
  loadAtSetpointBtuh,
  loadSlopeBtuhPerF,
  outdoorByMinute,
  requireHouseAfternoon,
} from "./afternoon";
import { idleFanSeconds, nextStage } from "./next-stage";
import { type ControlSettings, requireControlSettings } from "./settings";
import { summarizeTimeline, type TimelineMinute, type TimelineSummary } from "./timeline-summary";

export type TimelineInput = { readonly house: HouseAfternoon; readonly settings: ControlSettings };

export type Timeline = { readonly series: readonly TimelineMinute[]; readonly summary: TimelineSummary };

type Running = { readonly stage: 0 | 1 | 2; readonly minutes: number };

/**
 * One hot afternoon of this house under these settings, minute by minute.
 *
 * The room is one heat capacity: `C dT/dt = load − sensible capacity of the stage`, with the load falling by the
 * line's slope as the room warms. Each minute uses the closed-form exponential, so no step can be unstable.
 * It begins at the setpoint, idle and rested. The thermostat is taken to read the room rightly (its corrections
 * are judged elsewhere), and the air to be humid enough that cooling past the setpoint is used in full.
 * The capacity of a stage is steady; the lag after a start is part of the year's simulation, not of this picture.
 *
 * @param input - `house` as {@link HouseAfternoon}, `settings` as {@link ControlSettings}; ranges at their fields.
 * @returns The minutes, and their summary.
 * @throws {@link OutOfRangeError} naming the field outside its range.
 * @throws {@link ImpossibleStateError} when settings, stages or load points contradict each other.
 * @see First-order lumped capacitance (physics); the cycling law N = 4·Nmax·X(1−X) follows from it (tests show both).
 */
export function thermostatTimeline({ house, settings }: TimelineInput): Timeline {
  requireHouseAfternoon(house);
  requireControlSettings(settings, house.stages.length);
  const outdoorAt = outdoorByMinute(house.outdoor, house.durationMin);
  const step = minuteStep(house);
  const series: TimelineMinute[] = [];
  let indoorF = house.setpointF;
  let running: Running = { stage: 0, minutes: settings.minimumCompressorRestMin };
  let runOnLeftS = 0;
  let fanMinutesThisHour = 0;
  for (let minute = 0; minute < house.durationMin; minute++) {
    const stage = nextStage(
      running.stage,
      running.minutes,
      indoorF - house.setpointF,
      settings.coolingPastSetpointF,
      settings,
      house.stages.length,
    );
    if (stage === 0 && running.stage !== 0) runOnLeftS = settings.fanRunOnAfterCoolingS;
    running =
      (stage === 0) === (running.stage === 0)
        ? { stage, minutes: running.minutes + 1 }
        : { stage, minutes: 1 };
    if (minute % 60 === 0) fanMinutesThisHour = 0;
    const idleFanS =
      stage > 0 ? 0 : idleFanSeconds(settings, runOnLeftS, minute % 60, fanMinutesThisHour, 60);
    runOnLeftS = stage > 0 ? 0 : Math.max(0, runOnLeftS - 60);
    fanMinutesThisHour += stage > 0 ? 1 : idleFanS / 60;
    const outdoorF = outdoorAt(minute);
    series.push({ minute, indoorF, outdoorF, stage, fanOn: stage > 0 || idleFanS > 0, idleFanS });
    indoorF = step(indoorF, outdoorAt(minute + 0.5), stage);
  }
  return { series, summary: summarizeTimeline(series, house) };
}

/** The room temperature one minute later. */
function minuteStep(house: HouseAfternoon) {
  const slope = loadSlopeBtuhPerF(house);
  const hours = 1 / 60;
  const decay = exp((-slope * hours) / house.capacitanceBtuPerF);
  // (1 − decay)/slope, which for a house without slope is its limit: the straight line.
  const gain = slope > 0 ? (1 - decay) / slope : hours / house.capacitanceBtuPerF;
  return (indoorF: number, outdoorF: number, stage: number): number => {
    const removed = stage === 0 ? 0 : (house.stages[stage - 1]?.sensibleBtuh ?? 0);
    const surplus = loadAtSetpointBtuh(house, outdoorF) - removed;
    return house.setpointF + (indoorF - house.setpointF) * decay + surplus * gain;
  };
}

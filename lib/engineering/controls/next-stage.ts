import type { ControlSettings } from "./settings";

/**
 * The compressor stage for the coming minutes.
 *
 * @param stage - Stage now, 0 to 2.
 * @param minutesInState - Minutes the compressor has been running, or resting, 0 or more.
 * @param aboveSetpointF - Room minus setpoint, °F, −100 to 100.
 * @param pastSetpointF - How far below the setpoint cooling goes on now, °F, 0 to 5.
 * @param settings - Checked by the caller.
 * @param stageCount - Cooling stages, 1 or 2.
 * @returns Stage, 0 to 2.
 * @see The settings' own meaning (physics): offsets from the setpoint, shortest run and rest.
 */
export function nextStage(
  stage: number,
  minutesInState: number,
  aboveSetpointF: number,
  pastSetpointF: number,
  settings: ControlSettings,
  stageCount: number,
): 0 | 1 | 2 {
  const wantsSecond = stageCount > 1 && aboveSetpointF >= settings.secondStageStartOffsetF;
  if (stage === 0) {
    const rested = minutesInState >= settings.minimumCompressorRestMin;
    if (!rested || aboveSetpointF < settings.firstStageStartOffsetF) return 0;
    return wantsSecond ? 2 : 1;
  }
  const satisfied = aboveSetpointF <= -pastSetpointF;
  if (satisfied && minutesInState >= settings.minimumCompressorRunMin) return 0;
  if (stage === 1) return wantsSecond ? 2 : 1;
  return settings.stepBackToFirstStage && aboveSetpointF <= settings.firstStageStartOffsetF ? 1 : 2;
}

/**
 * Fan seconds of a step without compressor: run-on first, then what fan between calls asks for.
 *
 * @param settings - Checked by the caller.
 * @param runOnLeftS - Run-on still owed, s, 0 to 1,200.
 * @param minuteOfHour - Minute of the hour at which the step begins, 0 to 60.
 * @param fanMinutesThisHour - Fan minutes the hour has had, 0 to 60.
 * @param stepS - Length of the step, s, 1 to 60.
 * @returns Seconds, 0 to `stepS`.
 * @see The settings' own meaning (physics).
 */
export function idleFanSeconds(
  settings: ControlSettings,
  runOnLeftS: number,
  minuteOfHour: number,
  fanMinutesThisHour: number,
  stepS: number,
): number {
  if (settings.fanBetweenCalls === "on") return stepS;
  const runOnS = Math.min(stepS, runOnLeftS);
  if (settings.fanBetweenCalls === "off" || settings.fanBetweenCallsMinPerH === null) return runOnS;
  // The hour's owed minutes are run at its end, when it is known that no call has covered them.
  const owed = settings.fanBetweenCallsMinPerH - fanMinutesThisHour;
  return owed > 0 && owed >= 60 - minuteOfHour ? stepS : runOnS;
}

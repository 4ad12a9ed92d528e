import { ImpossibleStateError } from "../errors";
import { requireRange } from "../units";

/** What the fan does between cooling calls. */
export const FAN_BETWEEN_CALLS = ["off", "minutes per hour", "on"] as const;
export type FanBetweenCalls = (typeof FAN_BETWEEN_CALLS)[number];

/** The thermostat's settings, named by what they do. Offsets count from the setpoint. */
export type ControlSettings = {
  /** °F above setpoint at which cooling starts. 0 to 10. */
  readonly firstStageStartOffsetF: number;
  /** °F above setpoint at which the second stage joins. 0 to 20. Unused with one stage. */
  readonly secondStageStartOffsetF: number;
  /** Shortest compressor run, min. 0 to 60. */
  readonly minimumCompressorRunMin: number;
  /** Shortest pause between runs, min. 0 to 60. */
  readonly minimumCompressorRestMin: number;
  /** The second stage hands back to the first once the room has recovered to the first stage's start. */
  readonly stepBackToFirstStage: boolean;
  /** Seconds the fan runs on after the compressor stops. 0 to 1,200. */
  readonly fanRunOnAfterCoolingS: number;
  /** °F below setpoint that cooling may go on to dry the air. 0 (off) to 5. */
  readonly coolingPastSetpointF: number;
  /** °F added to what the thermostat's own sensor reads. −10 to 10. */
  readonly indoorTemperatureCorrectionF: number;
  /** Percentage points added to the thermostat's own humidity reading. −20 to 20. */
  readonly indoorHumidityCorrectionPct: number;
  readonly fanBetweenCalls: FanBetweenCalls;
  /** Fan minutes an hour, 1 to 59, with "minutes per hour"; else null. */
  readonly fanBetweenCallsMinPerH: number | null;
};

/** The settings on the equipment's own board. */
export type BoardSettings = {
  readonly capacitySettingTons: number;
  readonly capacityAdjustmentByBoard: boolean;
  readonly colderCoilCooling: boolean;
  /** Airflow each cooling stage is set to, cfm, first stage first. */
  readonly airflowSettingCfmByStage: readonly number[];
};

/** The same fields as someone typed them so far: what has not been entered is null. */
export type AsEntered<T> = { readonly [K in keyof T]: T[K] | null };

const NUMBERS = {
  firstStageStartOffsetF: ["°F", 0, 10],
  secondStageStartOffsetF: ["°F", 0, 20],
  minimumCompressorRunMin: ["min", 0, 60],
  minimumCompressorRestMin: ["min", 0, 60],
  fanRunOnAfterCoolingS: ["s", 0, 1_200],
  coolingPastSetpointF: ["°F", 0, 5],
  indoorTemperatureCorrectionF: ["°F", -10, 10],
  indoorHumidityCorrectionPct: ["%", -20, 20],
  fanBetweenCallsMinPerH: ["min/h", 1, 59],
} as const satisfies Partial<Record<keyof ControlSettings, readonly [string, number, number]>>;

/**
 * Refuses an entered setting outside its range; what is not entered passes.
 *
 * @throws {@link OutOfRangeError} naming the field.
 */
export function requireSettingRanges(settings: Partial<AsEntered<ControlSettings>>): void {
  for (const [name, [unit, min, max]] of Object.entries(NUMBERS)) {
    const value = settings[name as keyof typeof NUMBERS];
    if (value !== null && value !== undefined) requireRange(name, value, unit, min, max);
  }
}

/**
 * Refuses board settings outside their ranges; what is not entered passes.
 *
 * @throws {@link OutOfRangeError} naming the field.
 */
export function requireBoardRanges(board: AsEntered<BoardSettings>): void {
  if (board.capacitySettingTons !== null) {
    requireRange("capacitySettingTons", board.capacitySettingTons, "tons", 0.5, 20);
  }
  for (const [index, airflow] of (board.airflowSettingCfmByStage ?? []).entries()) {
    requireRange(`airflowSettingCfmByStage[${index}]`, airflow, "cfm", 50, 10_000);
  }
}

/**
 * Refuses settings a thermostat cannot follow.
 *
 * @param settings - Ranges at {@link ControlSettings}.
 * @param stageCount - Cooling stages, 1 or 2.
 * @throws {@link OutOfRangeError} outside the ranges named at the fields.
 * @throws {@link ImpossibleStateError} when two settings contradict each other.
 */
export function requireControlSettings(settings: ControlSettings, stageCount: number): void {
  requireSettingRanges(settings);
  if (stageCount > 1 && settings.secondStageStartOffsetF < settings.firstStageStartOffsetF) {
    throw new ImpossibleStateError(
      `Second-stage start offset ${settings.secondStageStartOffsetF} °F lies below the first-stage start offset ${settings.firstStageStartOffsetF} °F; raise it above the first.`,
      ["secondStageStartOffsetF", "firstStageStartOffsetF"],
    );
  }
  const needsMinutes = settings.fanBetweenCalls === "minutes per hour";
  if (needsMinutes !== (settings.fanBetweenCallsMinPerH !== null)) {
    throw new ImpossibleStateError(
      needsMinutes
        ? "Fan between calls is set to minutes per hour, but the minutes are missing; enter 1 to 59."
        : `Fan between calls is "${settings.fanBetweenCalls}", yet minutes per hour are given; leave them empty.`,
      ["fanBetweenCalls", "fanBetweenCallsMinPerH"],
    );
  }
}

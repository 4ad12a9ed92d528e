import { ImpossibleStateError } from "../errors";
import { cos } from "../exact-functions";
import { requireRange } from "../units";

/** Outdoor temperature over the afternoon. */
export type OutdoorCourse =
  | { readonly kind: "steady"; readonly outdoorF: number }
  | {
      readonly kind: "sinusoid";
      readonly meanF: number;
      /** Half the daily range, °F. */
      readonly amplitudeF: number;
      /** Minute of the timeline at which it is hottest. */
      readonly peakMinute: number;
    }
  /** Readings every `stepMin` minutes from minute 0 on; straight lines between them. */
  | { readonly kind: "series"; readonly stepMin: number; readonly valuesF: readonly number[] };

/** What one cooling stage takes out of the house, net of fan heat. */
export type StageCapacity = { readonly sensibleBtuh: number; readonly latentBtuh: number };

/** A house and its equipment on one afternoon: everything the timeline needs except the settings. */
export type HouseAfternoon = {
  readonly setpointF: number;
  /** The two points of the sensible load line, both at indoor `loadIndoorF`. */
  readonly loadIndoorF: number;
  readonly designOutdoorF: number;
  readonly designSensibleBtuh: number;
  readonly partLoadOutdoorF: number;
  readonly partLoadSensibleBtuh: number;
  /** Heat that warms air and light furnishings by one degree, Btu/°F. A stated assumption of the caller. */
  readonly capacitanceBtuPerF: number;
  /** One or two stages, the second the larger. */
  readonly stages: readonly StageCapacity[];
  readonly outdoor: OutdoorCourse;
  readonly durationMin: number;
};

/**
 * Refuses a house no afternoon can be run for, naming the field.
 *
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} for inputs that cannot be, naming the field.
 */
export function requireHouseAfternoon(house: HouseAfternoon): void {
  requireRange("setpointF", house.setpointF, "°F", 55, 95);
  requireRange("loadIndoorF", house.loadIndoorF, "°F", 55, 95);
  requireRange("designOutdoorF", house.designOutdoorF, "°F", -60, 140);
  requireRange("partLoadOutdoorF", house.partLoadOutdoorF, "°F", -60, 140);
  requireRange("designSensibleBtuh", house.designSensibleBtuh, "Btu/h", 0, 500_000);
  requireRange("partLoadSensibleBtuh", house.partLoadSensibleBtuh, "Btu/h", 0, 500_000);
  requireRange("capacitanceBtuPerF", house.capacitanceBtuPerF, "Btu/°F", 100, 1_000_000);
  requireRange("durationMin", house.durationMin, "min", 1, 10_080);
  if (!Number.isInteger(house.durationMin)) {
    throw new ImpossibleStateError("The duration has to be whole minutes.", ["durationMin"]);
  }
  requireRange("number of stages", house.stages.length, "", 1, 2);
  for (const [index, stage] of house.stages.entries()) {
    requireRange(`stages[${index}].sensibleBtuh`, stage.sensibleBtuh, "Btu/h", 1, 500_000);
    requireRange(`stages[${index}].latentBtuh`, stage.latentBtuh, "Btu/h", 0, 500_000);
  }
  const [first, second] = house.stages;
  if (first !== undefined && second !== undefined && second.sensibleBtuh < first.sensibleBtuh) {
    throw new ImpossibleStateError(
      `The second stage's sensible capacity ${second.sensibleBtuh} Btu/h is below the first stage's ${first.sensibleBtuh} Btu/h; give the smaller stage first.`,
      ["stages"],
    );
  }
  if (house.designOutdoorF - house.partLoadOutdoorF < 1) {
    throw new ImpossibleStateError(
      "The part-load outdoor temperature has to be at least 1 °F below the design outdoor temperature.",
      ["designOutdoorF", "partLoadOutdoorF"],
    );
  }
  if (house.designSensibleBtuh < house.partLoadSensibleBtuh) {
    throw new ImpossibleStateError(
      "The sensible load at part load is above the design load, though it is cooler outside.",
      ["designSensibleBtuh", "partLoadSensibleBtuh"],
    );
  }
}

/**
 * Slope of the sensible load line, Btu/h per °F of outdoor (and, with the other sign, indoor) temperature.
 *
 * @returns Btu/h per °F.
 */
export function loadSlopeBtuhPerF(house: HouseAfternoon): number {
  return (
    (house.designSensibleBtuh - house.partLoadSensibleBtuh) / (house.designOutdoorF - house.partLoadOutdoorF)
  );
}

/**
 * Sensible load with the room at the setpoint, Btu/h. Below 0 when the house loses heat.
 *
 * @param outdoorF - Outdoor dry bulb, °F, −60 to 140.
 * @returns Btu/h.
 * @see Straight line through two load points (physics).
 */
export function loadAtSetpointBtuh(house: HouseAfternoon, outdoorF: number): number {
  const slope = loadSlopeBtuhPerF(house);
  return (
    house.partLoadSensibleBtuh +
    slope * (outdoorF - house.partLoadOutdoorF) +
    slope * (house.loadIndoorF - house.setpointF)
  );
}

/**
 * Outdoor temperature as a function of the minute. Refuses a series too short for the duration.
 *
 * @param durationMin - Length of the run, min, 1 to 10,080.
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} for inputs that cannot be, naming the field.
 */
export function outdoorByMinute(course: OutdoorCourse, durationMin: number): (minute: number) => number {
  if (course.kind === "steady") {
    const outdoorF = requireRange("outdoor.outdoorF", course.outdoorF, "°F", -60, 140);
    return () => outdoorF;
  }
  if (course.kind === "sinusoid") {
    const meanF = requireRange("outdoor.meanF", course.meanF, "°F", -60, 140);
    const amplitudeF = requireRange("outdoor.amplitudeF", course.amplitudeF, "°F", 0, 60);
    const peak = requireRange("outdoor.peakMinute", course.peakMinute, "min", -10_080, 10_080);
    return (minute) => meanF + amplitudeF * cos((2 * Math.PI * (minute - peak)) / 1_440);
  }
  const step = requireRange("outdoor.stepMin", course.stepMin, "min", 1, 180);
  const values = course.valuesF.map((value, index) =>
    requireRange(`outdoor.valuesF[${index}]`, value, "°F", -60, 140),
  );
  const covered = (values.length - 1) * step;
  if (covered < durationMin) {
    throw new ImpossibleStateError(
      `The outdoor series covers ${Math.max(0, covered)} of ${durationMin} minutes; give it to the end or shorten the duration.`,
      ["outdoor", "durationMin"],
    );
  }
  return (minute) => {
    const at = Math.min(Math.floor(minute / step), values.length - 2);
    const from = values[at] ?? 0;
    const to = values[at + 1] ?? from;
    return from + ((to - from) * (minute - at * step)) / step;
  };
}

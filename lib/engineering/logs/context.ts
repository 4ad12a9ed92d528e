import { requireRange } from "../units";

/** What the analysis needs to know about the job. */
export type LogContext = {
  /** The job's indoor humidity limit, % RH. 20 to 90. */
  readonly humidityLimitPct: number;
  /** Height of the house, ft. −1,000 to 12,000. */
  readonly elevationFt: number;
  /** Sensible capacity delivered by each stage, first stage first, Btu/h. Null when not known: then no load line. */
  readonly deliveredSensibleBtuhByStage: readonly number[] | null;
  /** The load summary's design point. Null when not known. */
  readonly design: { readonly outdoorF: number; readonly sensibleBtuh: number } | null;
};

/**
 * Refuses a context outside its ranges, naming the field.
 *
 * @throws {@link OutOfRangeError} naming the field.
 */
export function requireLogContext(context: LogContext): void {
  requireRange("humidityLimitPct", context.humidityLimitPct, "%", 20, 90);
  requireRange("elevationFt", context.elevationFt, "ft", -1_000, 12_000);
  const stages = context.deliveredSensibleBtuhByStage;
  if (stages !== null) {
    requireRange("number of stages", stages.length, "", 1, 2);
    for (const [index, capacity] of stages.entries()) {
      requireRange(`deliveredSensibleBtuhByStage[${index}]`, capacity, "Btu/h", 1, 500_000);
    }
  }
  if (context.design !== null) {
    requireRange("design.outdoorF", context.design.outdoorF, "°F", 60, 130);
    requireRange("design.sensibleBtuh", context.design.sensibleBtuh, "Btu/h", 1, 500_000);
  }
}

import type { Finding } from "../findings";
import { textBeside } from "../limit-text";
import type { LogAnalysis } from "./analyze-log";
import { figure, judged, type LogLimits } from "./judged";
import { logsRules } from "./rules";

/** Sensors that never move, or disagree. */
export function sensorFindings({ sensors }: LogAnalysis, limits: LogLimits): readonly Finding[] {
  const stuckAfter = limits["logs.stillSensorH"];
  const still = sensors.longestStill.map(({ channel, hours, value }) =>
    judged(logsRules.stillSensor, {
      good: hours < stuckAfter,
      enough: true,
      statement: `The longest time ${WORDS[channel] ?? channel} read the very same (${value.toFixed(1)}) was ${textBeside(hours, [stuckAfter], 1)} h; ${stuckAfter.toFixed(0)} h means stuck.`,
      figures: [figure("longest time of one reading", hours, "h", 1)],
      nextStep: "Breathe on the sensor and see it move; replace it if it does not.",
      inputs: [channel],
    }),
  );
  const apart = (field: string, difference: number | null, most: number, unit: string): readonly Finding[] =>
    difference === null
      ? []
      : [
          judged(logsRules.sensorsApart, {
            good: Math.abs(difference) <= most,
            enough: true,
            statement: `The second indoor sensor reads ${difference < 0 ? "−" : ""}${textBeside(Math.abs(difference), [most], 1)} ${unit} from the first in the mean; ${most.toFixed(1)} ${unit} is the limit.`,
            figures: [figure("second minus first", difference, unit, 1)],
            nextStep: "Hold a trusted instrument beside both and set the corrections.",
            inputs: [field],
          }),
        ];
  return [
    ...still,
    ...apart("secondIndoorF", sensors.secondMinusFirstF, limits["logs.sensorsApartMaxF"], "°F"),
    ...apart("secondIndoorRhPct", sensors.secondMinusFirstRhPct, limits["logs.sensorsApartMaxRhPct"], "%"),
  ];
}

const WORDS: { readonly [channel: string]: string } = {
  indoorF: "the indoor temperature",
  indoorRhPct: "the indoor humidity",
  outdoorF: "the outdoor temperature",
  outdoorRhPct: "the outdoor humidity",
};

import type { Finding } from "../findings";
import { textBeside } from "../limit-text";
import type { LogAnalysis } from "./analyze-log";
import { figure, judged, type LogLimits } from "./judged";
import { logsRules } from "./rules";
import { stuckAfter } from "./sensors";

/** Sensors that never move, or disagree. */
export function sensorFindings({ sensors }: LogAnalysis, limits: LogLimits): readonly Finding[] {
  const limit = limits["logs.stillSensorH"];
  const still = sensors.longestStill.map((one) => {
    const { channel, hours, value } = one;
    const most = stuckAfter(one, limit);
    const isCoarse = most > limit;
    return judged(logsRules.stillSensor, {
      good: hours < most,
      enough: !isCoarse || hours < limit || hours >= most,
      statement: `The longest time ${WORDS[channel] ?? channel} read the very same (${value.toFixed(1)}) was ${textBeside(hours, [isCoarse ? limit : most], 1)} h; ${meansStuck(most, limit)}.`,
      figures: [figure("longest time of one reading", hours, "h", 1)],
      nextStep: "Breathe on the sensor and see it move; replace it if it does not.",
      unsure: "Breathe on the sensor and see it move: whole numbers may hide small changes.",
      inputs: [channel],
    });
  });
  const away = sensors.awayFromRoomDays;
  const place =
    away === null || away === 0
      ? []
      : [
          judged(logsRules.sensorPlace, {
            good: false,
            enough: away >= limits["logs.awayDaysMin"],
            statement: `On ${away} ${away === 1 ? "day" : "days"} the indoor temperature was far from the setpoint while the thermostat was content, or too hot for a room: the sensor was elsewhere.`,
            figures: [figure("days away from the room", away, "days", 0)],
            nextStep: "Hang the sensor beside the thermostat and import only the days it hung there.",
            unsure: "Ask whether the sensor was moved, or the power was off.",
            inputs: ["indoorF", "setpointF"],
          }),
        ];
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
    ...place,
    ...still,
    ...apart("secondIndoorF", sensors.secondMinusFirstF, limits["logs.sensorsApartMaxF"], "°F"),
    ...apart("secondIndoorRhPct", sensors.secondMinusFirstRhPct, limits["logs.sensorsApartMaxRhPct"], "%"),
  ];
}

function meansStuck(most: number, limit: number): string {
  if (most === limit) return `${most.toFixed(0)} h means stuck`;
  return Number.isFinite(most)
    ? `${most.toFixed(0)} h means stuck where whole numbers are written`
    : "where whole degrees are written no time means stuck";
}

const WORDS: { readonly [channel: string]: string } = {
  indoorF: "the indoor temperature",
  indoorRhPct: "the indoor humidity",
  outdoorF: "the outdoor temperature",
  outdoorRhPct: "the outdoor humidity",
};

import type { LogAnalysis } from "./analyze-log";
import { pct, sign, type Weighed } from "./cause-signs";
import { hungElsewhere } from "./dry-told";
import type { LogLimits } from "./judged";
import { stuckAfter } from "./sensors";

/** Share of the distance to outdoors closed in an hour, from which leakage or ventilation is suspected (common practice, no source). */
const MUCH_EXCHANGE_PER_H = 0.15;

/** Where moisture comes from is asked of a wet house only. */
const isWet = ({ humidity }: LogAnalysis, limits: LogLimits) =>
  humidity !== null && humidity.dryShare * 100 < limits["logs.dryShareMinPct"];

/** Signs that the house is wet in mild weather without a cooling call. */
export function mildWeather(analysis: LogAnalysis, limits: LogLimits): Weighed {
  const { moisture, running } = analysis;
  const wet = isWet(analysis, limits);
  return {
    id: "mild-wet-weather",
    title: "Mild, wet weather with no call for cooling",
    signs: [
      sign(
        running === null || !wet ? null : moisture?.mildIdleShareOfWet,
        (share) => share > 0.6,
        (share) => `${pct(share)} of the wet hours are mild (55 to 75 °F) and without cooling`,
        2,
      ),
      sign(
        wet ? moisture?.nightShareOfWet : null,
        (share) => share > 0.5,
        (share) => `${pct(share)} of the wet hours are at night`,
      ),
    ],
    nextCheck:
      "Ask about open windows and doors on mild days; then see whether a supplemental dehumidifier covers the dew-point design condition.",
  };
}

/** Signs that the water comes in with outdoor air. */
export function outdoorMoisture(analysis: LogAnalysis, limits: LogLimits): Weighed {
  const { moisture } = analysis;
  const wet = isWet(analysis, limits);
  const follows = moisture?.followsOutdoors;
  return {
    id: "outdoor-moisture",
    title: "Moisture from outdoors: ventilation or leakage",
    signs: [
      sign(
        // A slope that is not there proves nothing: a coil that holds the moisture hides it.
        wet && (follows?.slope ?? 0) > 0.5 && (follows?.r ?? 0) > 0.5 ? follows?.slope : null,
        () => true,
        (slope) =>
          `indoor moisture follows outdoors by ${slope.toFixed(2)} (r ${(follows?.r ?? 0).toFixed(2)}) when nothing runs`,
      ),
      sign(
        wet ? moisture?.exchangePerH : null,
        (share) => share > MUCH_EXCHANGE_PER_H,
        (share) =>
          `with nothing running indoor moisture closes ${pct(share)} of its distance to outdoors in an hour; a tight house stays below ${pct(MUCH_EXCHANGE_PER_H)}`,
        3,
      ),
    ],
    nextCheck: "Measure ventilation airflow and leakage; look at the ventilation's hours.",
  };
}

/** Signs that the water is made in the house: air from dry outdoors cannot make it wet. */
export function insideMoisture(analysis: LogAnalysis, limits: LogLimits): Weighed {
  const { moisture } = analysis;
  return {
    id: "inside-moisture",
    title: "Moisture made in the house: people, bathing, cooking, drying, damp ground",
    signs: [
      sign(
        // Wet weather proves nothing: what comes in may hide what is made.
        isWet(analysis, limits) && (moisture?.dryOutdoorsShareOfWet ?? 0) > 0.5
          ? moisture?.dryOutdoorsShareOfWet
          : null,
        () => true,
        (share) => `in ${pct(share)} of the wet hours the air outdoors was drier than the house may be`,
        3,
      ),
    ],
    nextCheck:
      "Ask who lives there now and what is dried or watered inside; try the exhaust fans; look under the house.",
  };
}

/** Signs that a sensor, not the house, is wrong. */
export function sensor(analysis: LogAnalysis, limits: LogLimits): Weighed {
  const { sensors } = analysis;
  const still = sensors.longestStill.find(({ channel }) => channel === "indoorRhPct");
  return {
    id: "sensor-error",
    title: "The sensor, not the house",
    signs: [
      sign(
        still?.hours,
        (hours) => still !== undefined && hours >= stuckAfter(still, limits["logs.stillSensorH"]),
        (hours) => `indoor humidity reads the same for ${hours.toFixed(0)} h at most`,
        3,
      ),
      sign(
        // No day away proves nothing: a sensor may be wrong in its place.
        hungElsewhere(analysis, limits) ? sensors.awayFromRoomDays : null,
        () => true,
        (days) => `on ${days} days it cannot have hung in the thermostat's room`,
        3,
      ),
      sign(
        sensors.secondMinusFirstRhPct,
        (difference) => Math.abs(difference) > limits["logs.sensorsApartMaxRhPct"],
        (difference) => `the second sensor reads ${difference.toFixed(1)} % from the first`,
      ),
    ],
    nextCheck: "Hold a trusted instrument beside the sensor and record both readings.",
  };
}

/** Signs that setpoint changes drive the humidity. */
export function setpointHabits({ setpoints, humidity }: LogAnalysis): Weighed {
  return {
    id: "setpoint-habits",
    title: "Setpoint habits: deep setbacks, or a room kept very cool",
    signs: [
      sign(
        setpoints?.bigDropsPerDay,
        (drops) => drops > 0.5,
        (drops) => `the setpoint drops by 3 °F or more ${drops.toFixed(1)} times a day`,
        2,
      ),
      sign(
        humidity === null || humidity.dryShare >= 0.95 ? null : setpoints?.warmMedianF,
        (setpoint) => setpoint < 72,
        (setpoint) => `the setpoint is ${setpoint.toFixed(0)} °F in the median`,
      ),
    ],
    nextCheck: "Ask how the thermostat is used; hold one setpoint for a week and compare.",
  };
}

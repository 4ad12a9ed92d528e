import { ImpossibleStateError } from "../errors";
import { type Finding, finding, notMeasured } from "../findings";
import type { Instrument } from "./instrument";
import { READING_NAMES, READINGS } from "./readings";
import { startupRules } from "./rules";
import { fieldNames, type StageCheck } from "./stage-check";

const DAY = /^\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/;

/**
 * Whether every instrument used was within its calibration on the day of the readings.
 *
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} for inputs that cannot be, naming the field.
 */
export function calibrationFinding(check: StageCheck): Finding {
  const rule = startupRules.calibration;
  const { measuredOn } = check.site;
  const used = READING_NAMES.flatMap((name) => {
    const instrument = check.values.readings[name]?.instrument ?? null;
    return instrument === null ? [] : [{ name, instrument }];
  });
  for (const { name, instrument } of used) requireDay(`calibrationDue of ${name}`, instrument.calibrationDue);
  requireDay("measuredOn", measuredOn);
  if (measuredOn === null || used.length === 0) {
    const missing = measuredOn === null ? ["measuredOn"] : READING_NAMES;
    return notMeasured(
      rule,
      fieldNames(check, missing),
      "Enter the day of the readings and choose the instrument of each.",
    );
  }
  // ISO days sort as text, so no calendar is needed.
  const late = used.filter(({ instrument }) => isLate(instrument, measuredOn));
  const unknown = used.filter(({ instrument }) => instrument.calibrationDue === null);
  const inputs = fieldNames(check, ["measuredOn", ...used.map(({ name }) => name)]);
  const { stage } = check.values;
  const words = (some: typeof used) => [...new Set(some.map(({ name }) => READINGS[name].words))].join(", ");
  if (late.length > 0) {
    return finding(rule, {
      verdict: "falls short",
      statement: `${stage}: past its calibration on ${measuredOn} was the instrument of the ${words(late)}.`,
      nextStep:
        "Take these readings again with an instrument in calibration: the stated accuracy no longer holds.",
      inputs,
    });
  }
  if (unknown.length > 0) {
    return finding(rule, {
      verdict: "can't tell",
      statement: `${stage}: no calibration date is known for the instrument of the ${words(unknown)}.`,
      nextStep: "Enter the calibration date of the instrument in the catalog.",
      inputs,
    });
  }
  return finding(rule, {
    verdict: "meets",
    statement: `${stage}: all ${used.length} readings with a named instrument were taken within its calibration.`,
    inputs,
  });
}

function isLate(instrument: Instrument, measuredOn: string): boolean {
  return instrument.calibrationDue !== null && instrument.calibrationDue < measuredOn;
}

function requireDay(name: string, day: string | null): void {
  if (day !== null && !DAY.test(day))
    throw new ImpossibleStateError(`${name} "${day}" is not a day; write it as YYYY-MM-DD.`, [name]);
}

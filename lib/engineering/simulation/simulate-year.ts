import { fastSaturationHumidityRatio } from "../equipment/saturation";
import { ImpossibleStateError } from "../errors";
import { requireRange } from "../units";
import { runHours, type YearTotals, type YearTrace } from "./year-loop";
import { HUMIDITIES, RUN_LENGTHS, STATE, STATE_NUMBERS, SUM, SUMS } from "./year-numbers";
import { type YearInput, type YearPlan, yearPlan } from "./year-plan";
import { type YearResult, yearResult } from "./year-result";

/** Hours run before the year begins, so that it does not begin with our guess of mass and furnishings. */
const RUN_IN_H = 336;

/**
 * A year of this house with this system, minute by minute.
 *
 * Air and furnishings, one heavy mass, water in the air and in a buffer; gains of sun, people and outdoor air; the coil of the equipment
 * model with its start, its lag after a stage change and the water that dries back off it; the thermostat's own logic. Before the year the
 * first two weeks are run once to settle. The same input gives the same bytes.
 *
 * What it is not: not a load calculation, not a code-compliance method; one well-mixed zone, ducts inside, no sky radiation, ventilation
 * balanced, a dehumidifier whose capacity follows the room's humidity ratio, and heat-pump electricity in winter left out.
 *
 * @param input - Ranges at its fields; weather of 24 to 8,784 hours without gaps.
 * @returns The year's account; h, lb, kWh, %, °F in the fields' names.
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} naming the field.
 * @throws {@link NotConvergedError} as the coil.
 * @see Balances of heat and water (physics); Henderson & Rengarajan 1996 for the coil's water (published).
 */
export function simulateYear(input: YearInput): YearResult {
  const plan = yearPlan(input);
  if (input.stepsPerMinute !== undefined && ![1, 2, 4].includes(input.stepsPerMinute)) {
    throw new ImpossibleStateError("stepsPerMinute has to be 1, 2 or 4.", ["stepsPerMinute"]);
  }
  const state = firstState(plan);
  runHours(plan, state, 0, Math.min(RUN_IN_H, plan.hours), emptyTotals(plan, null));
  const began = Float64Array.from(state);
  const totals = emptyTotals(plan, emptyTrace(plan, input.trace));
  runHours(plan, state, 0, plan.hours, totals);
  return yearResult(plan, input.weather, began, state, totals);
}

/**
 * The loop's state as a run begins: rooms at the outdoor temperature as far as the setpoints let them, half saturated.
 *
 * @param plan - From `yearPlan`.
 * @returns `STATE` numbers.
 * @see A first guess (physics); two weeks run before the year wipe it out.
 */
export function firstState(plan: YearPlan): Float64Array {
  const state = new Float64Array(STATE_NUMBERS);
  const { heatingSetpointF, coolingSetpointF } = plan.controls;
  const airF = Math.max(heatingSetpointF, Math.min(coolingSetpointF, plan.outdoorF[0] ?? coolingSetpointF));
  const humidityRatio = fastSaturationHumidityRatio(airF, plan.pressurePsia) / 2;
  state[STATE.airF] = airF;
  state[STATE.massF] = airF;
  state[STATE.humidityRatio] = humidityRatio;
  state[STATE.bufferRatio] = humidityRatio;
  state[STATE.minutesInState] = plan.settings.minimumCompressorRestMin;
  return state;
}

function emptyTrace(plan: YearPlan, asked: YearInput["trace"]): YearTrace | null {
  if (asked === undefined) return null;
  const firstHour = requireRange("trace.firstHour", asked.firstHour, "h", 0, plan.hours - 1);
  const hours = requireRange("trace.hours", asked.hours, "h", 1, Math.min(168, plan.hours - firstHour));
  if (!Number.isInteger(firstHour) || !Number.isInteger(hours)) {
    throw new ImpossibleStateError("trace.firstHour and trace.hours have to be whole hours.", ["trace"]);
  }
  return traceOf(firstHour, hours, hours * plan.stepsPerHour);
}

function traceOf(firstHour: number, hours: number, steps: number): YearTrace {
  return {
    firstHour,
    hours,
    roomF: new Float64Array(steps),
    rhPct: new Float64Array(steps),
    stage: new Uint8Array(steps),
    capacityBtuh: new Float64Array(steps),
  };
}

/**
 * What the loop writes into, empty.
 *
 * @param plan - From `yearPlan`.
 * @param trace - Steps to keep; `null` for none.
 * @returns Zeros, one place an hour.
 */
export function emptyTotals(plan: YearPlan, trace: YearTrace | null): YearTotals {
  const sums = new Float64Array(SUMS);
  sums[SUM.coldestInRunF] = plan.controls.coolingSetpointF;
  return {
    sums,
    humidityMinutes: new Float64Array(HUMIDITIES),
    runLengths: new Float64Array(RUN_LENGTHS),
    hourF: new Float64Array(plan.hours),
    hourRhPct: new Float64Array(plan.hours),
    hourWetMinutes: new Float64Array(plan.hours),
    hourRunMinutes: new Float64Array(plan.hours),
    // Always of one shape: a loop compiled for `null` would be thrown away when the first trace comes.
    trace: trace ?? traceOf(0, 0, 0),
  };
}

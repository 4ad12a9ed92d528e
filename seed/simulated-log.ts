import { DateTime } from "luxon";
import { hourOfYear } from "@/lib/domain/forecast-lived/log-weather";
import { waterSaturationPressurePsia } from "@/lib/engineering/air";
import type { YearInput } from "@/lib/engineering/simulation";
import { emptyTotals, firstState } from "@/lib/engineering/simulation/simulate-year";
import { runHours } from "@/lib/engineering/simulation/year-loop";
import { yearPlan } from "@/lib/engineering/simulation/year-plan";
import { shown } from "./deviations";
import { GENERATED_LOG_HEADINGS } from "./house-log";

const MASS_RATIO = 0.621945;
const STEP_MIN = 5;
const DAY_H = 24;
const RUN_IN_H = 336;

/** When an invented log was written. */
export type LogDays = { readonly firstDay: string; readonly days: number; readonly zone: string };

/**
 * An invented log: what loggers would have written in this house, by the product's own year in the weather file's own hours. Made with a
 * house that differs from the one a job assumes, it shows what a fit finds. The fan runs with the compressor; it is a log of summer days.
 */
export function simulatedLog(input: YearInput, { firstDay, days, zone }: LogDays): string {
  const plan = yearPlan(input);
  const start = DateTime.fromISO(firstDay, { zone });
  const firstHour = hourOfYear(start.toMillis(), input.weather);
  const state = firstState(plan);
  runHours(plan, state, firstHour - RUN_IN_H, firstHour, emptyTotals(plan, null));
  const lines: string[] = [GENERATED_LOG_HEADINGS.join(",")];
  const between = (values: Float64Array, minute: number): number => {
    const hour = Math.floor(minute / 60);
    const before = values[hour - 1] ?? Number.NaN;
    return before + (((values[hour] ?? Number.NaN) - before) * (minute - 60 * hour)) / 60;
  };
  for (let day = 0; day < days; day++) {
    const from = firstHour + day * DAY_H;
    const steps = DAY_H * 60;
    const trace = {
      firstHour: from,
      hours: DAY_H,
      roomF: new Float64Array(steps),
      rhPct: new Float64Array(steps),
      stage: new Uint8Array(steps),
      capacityBtuh: new Float64Array(steps),
    };
    runHours(plan, state, from, from + DAY_H, emptyTotals(plan, trace));
    for (let step = 0; step < steps; step += STEP_MIN) {
      const at = start.plus({ minutes: day * steps + step });
      const minute = 60 * from + step + STEP_MIN / 2;
      const outdoorF = between(input.weather.dryBulbF, minute);
      const ratio = between(input.weather.humidityRatio, minute);
      const vapourPsia = (plan.pressurePsia * ratio) / (MASS_RATIO + ratio);
      // Between two foggy hours the straight line lies a little above saturation; no instrument shows that.
      const outdoorRh = Math.min(100, (100 * vapourPsia) / waterSaturationPressurePsia(outdoorF));
      const stages = Array.from(trace.stage.subarray(step, step + STEP_MIN));
      const first = 60 * stages.filter((stage) => stage > 0).length;
      const last = step + STEP_MIN - 1;
      lines.push(
        [
          at.toFormat("yyyy-MM-dd HH:mm"),
          shown(trace.roomF[last] ?? Number.NaN, 1),
          shown(trace.rhPct[last] ?? Number.NaN, 1),
          shown(outdoorF, 1),
          shown(outdoorRh, 1),
          input.controls.coolingSetpointF,
          first,
          60 * stages.filter((stage) => stage === 2).length,
          first,
        ].join(","),
      );
    }
  }
  return `${lines.join("\n")}\n`;
}

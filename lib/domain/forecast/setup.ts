import type { ForecastHouse, ForecastOption } from "@/lib/engineering/simulation";
import type { JobContext } from "../evaluate/context";
import { assuming, type ForecastChanges, type SystemAssumption } from "./assumptions";
import { forecastControls, forecastDehumidifier, forecastVentilation } from "./controls";
import { forecastHouse, forecastLimit } from "./house";
import type { ForecastMissing, ForecastPart } from "./missing";
import { forecastSystem } from "./system";

/** One option as the engine takes it, with what was assumed on the way. */
export type OptionSetup = {
  readonly option: ForecastOption;
  readonly assumptions: readonly SystemAssumption[];
};

/**
 * An option's own part of a forecast: equipment, controls, ventilation and dehumidifier, each from the stage records.
 *
 * @param context - The job as it would be with the option (`optionContext`), or as its records stand.
 */
export function optionSetup(
  context: JobContext,
  name: string,
  changed: ForecastChanges["system"],
): ForecastPart<OptionSetup> {
  const assume = assuming(changed);
  const system = forecastSystem(context, assume);
  const controls = forecastControls(context, assume);
  const ventilation = forecastVentilation(context);
  const dehumidifier = forecastDehumidifier(context, assume);
  if (!system.ready || !controls.ready || !ventilation.ready || !dehumidifier.ready) {
    return { ready: false, missing: missingOf([system, controls, ventilation, dehumidifier]) };
  }
  return {
    ready: true,
    value: {
      option: {
        name,
        system: system.value,
        controls: controls.value,
        ventilation: ventilation.value,
        dehumidifier: dehumidifier.value,
      },
      assumptions: assume.used,
    },
  };
}

/** What a job's options are forecast in: the house of its load summary, and the promise. */
export type JobSetup = { readonly house: ForecastHouse; readonly humidityLimitPct: number };

/** House and limit from the job's own records, whatever the options say. */
export function jobSetup(context: JobContext, changed: ForecastChanges["house"]): ForecastPart<JobSetup> {
  const house = forecastHouse(context, changed);
  const limit = forecastLimit(context);
  if (!house.ready || !limit.ready) return { ready: false, missing: missingOf([house, limit]) };
  return { ready: true, value: { house: house.value, humidityLimitPct: limit.value } };
}

/** Names that differ: the second of two equal ones says so. */
export function namedApart(labels: readonly string[]): readonly string[] {
  return labels.map((label, place) => {
    const before = labels.slice(0, place).filter((one) => one === label).length;
    return before === 0 ? label : `${label} (${before + 1})`;
  });
}

/** What several parts miss, each once. */
export function missingOf(parts: readonly ForecastPart<unknown>[]): readonly ForecastMissing[] {
  const all = parts.flatMap((part) => (part.ready ? [] : part.missing));
  return all.filter((one, place) => all.findIndex((other) => other.text === one.text) === place);
}

import type { Finding } from "@/lib/engineering/findings";
import { loadFindings } from "@/lib/engineering/load";
import type { JobContext } from "./context";

/** Totals, outdoor air, leakage and padding of the load summary. */
export function loadSummaryFindings(context: JobContext): readonly Finding[] {
  const {
    loadSource: _source,
    humidityLimitPct: _limit,
    occupants: _people,
    householdPintsPerDay: _household,
    groundPintsPerDay: _ground,
    notes: _notes,
    ...readings
  } = context.inputs.load_summary;
  return loadFindings(
    {
      ...readings,
      elevationFt: context.elevationFt,
      weatherCoolingDbF: context.weather?.coolingDbF ?? null,
      weatherHeatingDbF: context.weather?.heatingDbF ?? null,
    },
    context.limits,
  );
}

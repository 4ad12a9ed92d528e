import type { Finding } from "@/lib/engineering/findings";
import { loadFindings } from "@/lib/engineering/load";
// By its file: the phone evaluates a job too, and has no use for the year's loop.
import { crossCheckFindings } from "@/lib/engineering/simulation/cross-check";
import type { JobContext } from "./context";

/** Totals, outdoor air, leakage and padding of the load summary, and the house model beside it. */
export function loadSummaryFindings(context: JobContext): readonly Finding[] {
  const {
    loadSource: _source,
    humidityLimitPct: _limit,
    occupants: _people,
    householdPintsPerDay: _household,
    groundPintsPerDay: _ground,
    notes: _notes,
    deviations: _reasons,
    ...readings
  } = context.inputs.load_summary;
  const { elevationFt } = context;
  return [
    ...loadFindings(
      {
        ...readings,
        elevationFt,
        weatherCoolingDbF: context.weather?.coolingDbF ?? null,
        weatherHeatingDbF: context.weather?.heatingDbF ?? null,
      },
      context.limits,
    ),
    ...crossCheckFindings({
      sensibleCoolingBtuh: readings.sensibleCoolingBtuh,
      latentCoolingBtuh: readings.latentCoolingBtuh,
      heatingBtuh: readings.heatingBtuh,
      indoorCoolingDbF: readings.indoorCoolingDbF,
      indoorCoolingRhPct: readings.indoorCoolingRhPct,
      indoorHeatingDbF: readings.indoorHeatingDbF,
      outdoorCoolingDbF: readings.outdoorCoolingDbF,
      outdoorCoolingWbF: readings.outdoorCoolingWbF,
      outdoorHeatingDbF: readings.outdoorHeatingDbF,
      floorAreaFt2: readings.floorAreaFt2,
      bedrooms: readings.bedrooms,
      houseHeightFt: readings.houseHeightFt,
      leakageCfm50: readings.leakageCfm50,
      ventilationCfm: readings.ventilationCfm,
      elevationFt,
    }),
  ];
}

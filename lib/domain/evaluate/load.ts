import type { Finding } from "@/lib/engineering/findings";
import { componentFindings, type LoadReadings, loadFindings } from "@/lib/engineering/load";
// By its file: the phone evaluates a job too, and has no use for the year's loop.
import { crossCheckFindings } from "@/lib/engineering/simulation/cross-check";
import type { LoadSummaryInputs } from "../stages/load-summary";
import type { JobContext } from "./context";

/** Totals and their parts, outdoor air, leakage and padding of the load summary, and the house model beside it. */
export function loadSummaryFindings(context: JobContext): readonly Finding[] {
  const readings = loadReadings(context);
  return [
    ...loadFindings(readings, context.limits),
    ...componentFindings(context.inputs.load_summary, context.limits),
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
      elevationFt: readings.elevationFt,
    }),
  ];
}

/** The load summary of a job as the engineering reads it, with the weather's own design values. */
export function loadReadings({ inputs, elevationFt, weather }: JobContext): LoadReadings {
  const load = inputs.load_summary;
  return {
    ...load,
    ductLoadBtuh: load.ductLoadBtuh ?? ductsByComponent(load),
    elevationFt,
    weatherCoolingDbF: weather?.coolingDbF ?? null,
    weatherHeatingDbF: weather?.heatingDbF ?? null,
  };
}

function ductsByComponent(load: LoadSummaryInputs): number | null {
  const { sensibleDuctsBtuh, latentDuctsBtuh } = load;
  return sensibleDuctsBtuh === null && latentDuctsBtuh === null
    ? null
    : (sensibleDuctsBtuh ?? 0) + (latentDuctsBtuh ?? 0);
}

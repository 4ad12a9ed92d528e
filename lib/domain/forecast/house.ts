import {
  type ForecastHouse,
  type LoadForHouse,
  SUBURBAN_SHELTER,
  storeysOf,
} from "@/lib/engineering/simulation";
import type { JobContext } from "../evaluate/context";
import { derive } from "../evaluate/derive";
import type { ForecastChanges } from "./assumptions";
import { emptyFields, type ForecastPart, missingField, problem } from "./missing";

const NEEDED = [
  "heatingBtuh",
  "sensibleCoolingBtuh",
  "indoorHeatingDbF",
  "outdoorHeatingDbF",
  "indoorCoolingDbF",
  "outdoorCoolingDbF",
  "floorAreaFt2",
  "bedrooms",
  "houseHeightFt",
  "ventilationCfm",
] as const;

/** The house behind the job's own load summary. An option changes the system, not the house: give the records' context, not an option's. */
export function forecastHouse(
  context: JobContext,
  changed: ForecastChanges["house"],
): ForecastPart<ForecastHouse> {
  const load = context.inputs.load_summary;
  const loads = derive(
    {
      heatingBtuh: load.heatingBtuh,
      sensibleCoolingBtuh: load.sensibleCoolingBtuh,
      indoorHeatingDbF: load.indoorHeatingDbF,
      outdoorHeatingDbF: load.outdoorHeatingDbF,
      indoorCoolingDbF: load.indoorCoolingDbF,
      outdoorCoolingDbF: load.outdoorCoolingDbF,
      floorAreaFt2: load.floorAreaFt2,
      bedrooms: load.bedrooms,
      houseHeightFt: load.houseHeightFt,
      ventilationCfm: load.ventilationCfm,
    },
    ({ houseHeightFt, ...given }): LoadForHouse => ({
      ...given,
      storeys: storeysOf(houseHeightFt),
      shelterClass: SUBURBAN_SHELTER,
      leakageCfm50: load.leakageCfm50,
      leakageMeasured: load.leakageKnownBy === "measured",
      occupants: load.occupants,
      householdPintsPerDay:
        load.householdPintsPerDay === null ? null : load.householdPintsPerDay + (load.groundPintsPerDay ?? 0),
    }),
  );
  if (load.householdPintsPerDay === null && (load.groundPintsPerDay ?? 0) > 0) {
    const why = "damp ground is given, and is added to it";
    return { ready: false, missing: [missingField("load_summary", "householdPintsPerDay", why)] };
  }
  if (loads.known) {
    return { ready: true, value: { kind: "load summary", load: loads.value, changed } };
  }
  if (loads.problem !== null)
    return {
      ready: false,
      missing: [problem(loads.problem, { stage: "load_summary", field: "heatingBtuh" })],
    };
  return { ready: false, missing: emptyFields(context.inputs, "load_summary", NEEDED) };
}

/** The humidity limit promised. */
export function forecastLimit({ inputs }: JobContext): ForecastPart<number> {
  const { humidityLimitPct } = inputs.load_summary;
  return humidityLimitPct === null
    ? { ready: false, missing: [missingField("load_summary", "humidityLimitPct")] }
    : { ready: true, value: humidityLimitPct };
}

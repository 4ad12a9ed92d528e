import type { EquipmentModel } from "@/lib/domain/catalog";
import type { StartupRecordInputs } from "@/lib/domain/stages/startup-record";
import { goodInstruments, TIGHT_CIRCUIT } from "./design-defaults";
import { stageReadings } from "./startup-readings";
import type { DemoWorld } from "./world";

/** A startup of the held-coil heat pump in which nothing is amiss, read on a hot afternoon. Invented. */
export function cleanStartup(
  world: DemoWorld,
  at: {
    readonly model: EquipmentModel;
    readonly capacitySetting: string;
    readonly elevationFt: number;
    /** Another one scatters the readings otherwise. */
    readonly seed: number;
  },
): Partial<StartupRecordInputs> {
  const { seed, ...job } = at;
  const conditions = {
    ...job,
    colderCoil: true,
    outdoorDbF: 91,
    moistureReadAs: "wet bulb",
    superheatF: 10.5,
    subcoolingF: 9.4,
  } as const;
  return {
    ...goodInstruments(world),
    outdoorDbF: conditions.outdoorDbF,
    refrigerant: "R-454B",
    meteringDevice: "expansion valve",
    targetSubcoolingF: 9,
    targetSuperheatF: 10,
    supplyVoltage: 241,
    outdoorUnitAmps: 10.9,
    ratedAmps: 14.2,
    ...TIGHT_CIRCUIT,
    lineSetLengthFt: 35,
    chargeAddedOz: 12,
    evacuationMicrons: 320,
    ...stageReadings({
      ...conditions,
      stage: "second",
      returnDbF: 75.2,
      returnRhPct: 54,
      airflowCfm: 852,
      externalStaticInWc: 0.5,
      fanPowerW: 178,
      totalShare: 1.01,
      moistureShare: 1,
      seed,
    }),
    ...stageReadings({
      ...conditions,
      stage: "first",
      returnDbF: 73.9,
      returnRhPct: 53,
      airflowCfm: 712,
      externalStaticInWc: 0.35,
      fanPowerW: 108,
      totalShare: 0.97,
      moistureShare: 1,
      seed: seed + 1,
    }),
    leftCapacitySetting: job.capacitySetting,
    leftFirstStageAirflowSetting: "B",
    leftSecondStageAirflowSetting: "C",
    walkThroughDone: true,
  };
}

import { dryControls, GULF_COAST, goodInstruments, TIGHT_CIRCUIT } from "../design-defaults";
import { importGeneratedLog } from "../generated-log";
import { HUMID_HOUSE } from "../logged-houses";
import { openJob } from "../open-job";
import { fillAndSign } from "../stage-steps";
import { stageReadings } from "../startup-readings";
import type { DemoWorld } from "../world";

const ELEVATION_FT = 25;
const CAPACITY_SETTING = "2.5 tons";

/** A chain weak in several links, signed all the same, and the wet summer that followed. */
export async function seedHumidJob(world: DemoWorld): Promise<void> {
  const model = world.equipment.singleSpeed;
  const job = await openJob(world, {
    title: "Replace air conditioner, humid since",
    customerName: "Odalys Brackenridge-Moy",
    addressLine: "7 Shrimpers Lane",
    city: "Heronport",
    region: "TX",
    elevationFt: ELEVATION_FT,
    techs: ["secondTech"],
    startupDue: "2026-07-08",
    reviewDue: "2026-08-26",
  });
  await fillAndSign(world, job, "load_summary", "office", {
    ...GULF_COAST,
    loadSource: "Rule of thumb by the previous installer (invented)",
    sensibleCoolingBtuh: 19_000,
    latentCoolingBtuh: 4_800,
    heatingBtuh: 26_000,
    safetyFactorPct: 15,
    floorAreaFt2: 2_000,
    bedrooms: 3,
    houseHeightFt: 8.5,
    occupants: 3,
    leakageCfm50: 2_200,
    leakageKnownBy: "assumed",
    ventilationCfm: 60,
  });
  await fillAndSign(world, job, "equipment_selection", "office", {
    equipmentModelId: model.id,
    capacitySetting: CAPACITY_SETTING,
    auxiliaryHeatKw: 10,
    dehumidifierPintsPerDay: 0,
    reason: "Same size as the old one.",
  });
  await fillAndSign(world, job, "airflow_setup", "office", {
    secondStageAirflowSetting: "tap 4",
    designExternalStaticInWc: 0.5,
    filterDropInWc: 0.15,
    coilDropInWc: 0.2,
    otherDropInWc: 0,
    totalEffectiveLengthFt: 260,
  });
  await fillAndSign(world, job, "control_setup", "office", {
    ...dryControls(world),
    controlModelId: world.controls.oneStage,
    coolingSetpointF: 74,
    firstStageStartOffsetF: 0.5,
    secondStageStartOffsetF: 0.5,
    minimumCompressorRunMin: 5,
    stepBackToFirstStage: false,
    fanRunOnAfterCoolingS: 90,
    fanBetweenCalls: "on",
    fanWiredFor: "one stage",
  });
  await fillAndSign(world, job, "startup_record", "secondTech", {
    ...goodInstruments(world),
    airflowInstrumentId: world.instruments.oldFlowHood,
    outdoorDbF: 92,
    refrigerant: "R-410A",
    meteringDevice: "expansion valve",
    targetSubcoolingF: 10,
    supplyVoltage: 239,
    outdoorUnitAmps: 10.7,
    ratedAmps: 13.1,
    ...TIGHT_CIRCUIT,
    lineSetLengthFt: 30,
    chargeAddedOz: 0,
    evacuationMicrons: 450,
    ...stageReadings({
      model,
      capacitySetting: CAPACITY_SETTING,
      colderCoil: false,
      stage: "second",
      elevationFt: ELEVATION_FT,
      outdoorDbF: 92,
      returnDbF: 76.2,
      returnRhPct: 56,
      airflowCfm: 1_130,
      externalStaticInWc: 0.5,
      fanPowerW: 262,
      totalShare: 0.74,
      moistureShare: 0.52,
      superheatF: 19,
      subcoolingF: 4.2,
      moistureReadAs: "wet bulb",
      seed: 201,
    }),
    leftCapacitySetting: CAPACITY_SETTING,
    leftSecondStageAirflowSetting: "tap 4",
    walkThroughDone: true,
    notes: "No time to adjust the charge; come back (invented).",
  });
  const logImportId = await importGeneratedLog(world, job, "office", HUMID_HOUSE);
  await fillAndSign(world, job, "humidity_review", "office", {
    logImportId,
    conclusion: "broken",
    cause: "Low charge, high airflow, and a fan that runs between calls over a wet coil.",
    nextLook: "2026-12-15",
    notes: "The log is invented: two generated weeks in August.",
  });
}

import type { AirflowSetupInputs } from "@/lib/domain/stages/airflow-setup";
import { CENTRAL_INDIANA, dryControls, goodInstruments, TIGHT_CIRCUIT } from "../design-defaults";
import { openJob } from "../open-job";
import { fill, fillAndSign, reopen } from "../stage-steps";
import { stageReadings } from "../startup-readings";
import type { DemoWorld } from "../world";

const ELEVATION_FT = 810;
const PLACE = { city: "Millgate Junction", region: "IN", elevationFt: ELEVATION_FT } as const;

const DUCTS: Partial<AirflowSetupInputs> = {
  designExternalStaticInWc: 0.5,
  supplyDropInWc: 0.15,
  returnDropInWc: 0.1,
  filterDropInWc: 0.12,
  coilDropInWc: 0.13,
  otherDropInWc: 0,
  totalEffectiveLengthFt: 300,
};

export async function seedLoadDone(world: DemoWorld): Promise<void> {
  const job = await openJob(world, {
    ...PLACE,
    title: "Farmhouse, first cooling",
    customerName: "Ambrose Kettering-Silva",
    addressLine: "1200 Fencerow Road",
    startupDue: "2027-04-20",
  });
  await fillAndSign(world, job, "load_summary", "office", {
    ...CENTRAL_INDIANA,
    loadSource: "Room-by-room worksheet of the office (invented), 2026-11-16",
    sensibleCoolingBtuh: 22_800,
    latentCoolingBtuh: 4_900,
    heatingBtuh: 52_000,
    floorAreaFt2: 2_250,
    bedrooms: 4,
    houseHeightFt: 16.4,
    occupants: 5,
    leakageCfm50: 2_600,
    ventilationCfm: 40,
  });
}

export async function seedSelectedEquipment(world: DemoWorld): Promise<void> {
  const job = await openJob(world, {
    ...PLACE,
    title: "Replace air conditioner, single speed",
    customerName: "Philippa Narrowgate-Osei",
    addressLine: "88 Silo Street",
    techs: ["secondTech"],
    startupDue: "2027-04-06",
  });
  await fillAndSign(world, job, "load_summary", "office", {
    ...CENTRAL_INDIANA,
    loadSource: "Room-by-room worksheet of the office (invented), 2026-11-09",
    sensibleCoolingBtuh: 20_300,
    latentCoolingBtuh: 4_700,
    heatingBtuh: 40_000,
    floorAreaFt2: 1_950,
    bedrooms: 3,
    houseHeightFt: 9,
    occupants: 3,
    leakageCfm50: 1_800,
    ventilationCfm: 60,
  });
  await fillAndSign(world, job, "equipment_selection", "office", {
    equipmentModelId: world.equipment.singleSpeed.id,
    capacitySetting: "2.5 tons",
    auxiliaryHeatKw: 0,
    dehumidifierPintsPerDay: 0,
    reason: "Furnace stays; only the cooling is replaced.",
  });
}

/** Two stages read, both close to what the maker's data promise. */
export async function seedGoodStartup(world: DemoWorld): Promise<void> {
  const model = world.equipment.twoStage;
  const job = await openJob(world, {
    ...PLACE,
    title: "Two-stage heat pump",
    customerName: "Leopold Ashgrove-Nakamura",
    addressLine: "17 Covered Bridge Lane",
    techs: ["tech"],
    startupDue: "2026-08-19",
    reviewDue: "2027-07-10",
  });
  await fillAndSign(world, job, "load_summary", "office", {
    ...CENTRAL_INDIANA,
    loadSource: "Room-by-room worksheet of the office (invented), 2026-07-28",
    sensibleCoolingBtuh: 23_200,
    latentCoolingBtuh: 6_200,
    heatingBtuh: 43_000,
    floorAreaFt2: 2_400,
    bedrooms: 4,
    houseHeightFt: 16.4,
    occupants: 4,
    leakageCfm50: 1_700,
    ventilationCfm: 75,
  });
  await fillAndSign(world, job, "equipment_selection", "office", {
    equipmentModelId: model.id,
    capacitySetting: "3 tons",
    auxiliaryHeatKw: 10,
    dehumidifierPintsPerDay: 0,
    reason: "Meets the load; the first stage carries most summer days.",
  });
  await fillAndSign(world, job, "airflow_setup", "office", {
    ...DUCTS,
    firstStageAirflowSetting: "low",
    secondStageAirflowSetting: "medium",
  });
  await fillAndSign(world, job, "control_setup", "office", dryControls(world));
  const conditions = {
    model,
    capacitySetting: "3 tons",
    colderCoil: false,
    elevationFt: ELEVATION_FT,
    outdoorDbF: 86,
    returnDbF: 75.4,
    superheatF: 9.6,
    subcoolingF: 10.4,
    moistureReadAs: "wet bulb",
  } as const;
  await fillAndSign(world, job, "startup_record", "tech", {
    ...goodInstruments(world),
    outdoorDbF: 86,
    refrigerant: "R-454B",
    meteringDevice: "expansion valve",
    targetSubcoolingF: 10,
    targetSuperheatF: 10,
    supplyVoltage: 243,
    outdoorUnitAmps: 12.6,
    ratedAmps: 16.2,
    ...TIGHT_CIRCUIT,
    lineSetLengthFt: 28,
    chargeAddedOz: 7.8,
    evacuationMicrons: 280,
    ...stageReadings({
      ...conditions,
      stage: "second",
      returnRhPct: 52,
      airflowCfm: 1_004,
      externalStaticInWc: 0.5,
      fanPowerW: 215,
      totalShare: 0.99,
      moistureShare: 1.01,
      seed: 401,
    }),
    ...stageReadings({
      ...conditions,
      stage: "first",
      returnRhPct: 51,
      airflowCfm: 716,
      externalStaticInWc: 0.26,
      fanPowerW: 90,
      totalShare: 1.01,
      moistureShare: 0.99,
      seed: 402,
    }),
    leftCapacitySetting: "3 tons",
    leftFirstStageAirflowSetting: "low",
    leftSecondStageAirflowSetting: "medium",
    walkThroughDone: true,
  });
}

/** Signed, then reopened because two readings had been exchanged; the new revision waits for the tech's signature. */
export async function seedReopenedStartup(world: DemoWorld): Promise<void> {
  const model = world.equipment.heldCoil;
  const job = await openJob(world, {
    ...PLACE,
    title: "Heat pump, startup read again",
    customerName: "Rosalind Thackerby-Ito",
    addressLine: "302 Sycamore Spur",
    techs: ["secondTech"],
    startupDue: "2026-09-22",
    reviewDue: "2027-07-20",
  });
  await fillAndSign(world, job, "load_summary", "office", {
    ...CENTRAL_INDIANA,
    loadSource: "Room-by-room worksheet of the office (invented), 2026-08-30",
    sensibleCoolingBtuh: 20_600,
    latentCoolingBtuh: 5_900,
    heatingBtuh: 38_000,
    floorAreaFt2: 2_100,
    bedrooms: 3,
    houseHeightFt: 16.4,
    occupants: 4,
    leakageCfm50: 1_500,
    ventilationCfm: 70,
  });
  await fillAndSign(world, job, "equipment_selection", "office", {
    equipmentModelId: model.id,
    capacitySetting: "2.5 tons",
    auxiliaryHeatKw: 10,
    dehumidifierPintsPerDay: 0,
    reason: "Variable speed for a humid finished basement.",
  });
  await fillAndSign(world, job, "airflow_setup", "office", {
    ...DUCTS,
    firstStageAirflowSetting: "B",
    secondStageAirflowSetting: "C",
  });
  await fillAndSign(world, job, "control_setup", "office", {
    ...dryControls(world),
    colderCoilCooling: true,
  });
  const readings = {
    ...goodInstruments(world),
    outdoorDbF: 84,
    refrigerant: "R-454B",
    meteringDevice: "expansion valve",
    targetSubcoolingF: 9,
    targetSuperheatF: 10,
    supplyVoltage: 242,
    outdoorUnitAmps: 10.4,
    ratedAmps: 14.2,
    ...TIGHT_CIRCUIT,
    lineSetLengthFt: 25,
    chargeAddedOz: 6,
    evacuationMicrons: 350,
    leftCapacitySetting: "2.5 tons",
    leftFirstStageAirflowSetting: "B",
    leftSecondStageAirflowSetting: "C",
    walkThroughDone: true,
    ...stageReadings({
      model,
      capacitySetting: "2.5 tons",
      colderCoil: true,
      stage: "second",
      elevationFt: ELEVATION_FT,
      outdoorDbF: 84,
      returnDbF: 75.2,
      returnRhPct: 53,
      airflowCfm: 848,
      externalStaticInWc: 0.5,
      fanPowerW: 176,
      totalShare: 1,
      moistureShare: 1.02,
      superheatF: 9.8,
      subcoolingF: 9.1,
      moistureReadAs: "wet bulb",
      seed: 501,
    }),
  } as const;
  await fillAndSign(world, job, "startup_record", "secondTech", {
    ...readings,
    // The wet bulb as first written down: too high, so that hardly any water seemed to leave the air.
    secondSupplyWbF: 53.9,
    secondSupplyDbF: 54.6,
  });
  const version = await reopen(
    world,
    job,
    "startup_record",
    "office",
    "Supply readings were taken before the coil had settled; read again.",
  );
  await fill(world, job, "startup_record", "secondTech", readings, version);
}

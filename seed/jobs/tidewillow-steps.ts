import type { JobId } from "@/lib/domain/ids";
import type { AirflowSetupInputs } from "@/lib/domain/stages/airflow-setup";
import { dryControls, GULF_COAST, goodInstruments, TIGHT_CIRCUIT } from "../design-defaults";
import { openJob } from "../open-job";
import { fill, fillAndSign } from "../stage-steps";
import { stageReadings } from "../startup-readings";
import type { DemoWorld } from "../world";

const ELEVATION_FT = 40;
const PLACE = { city: "Saltmarrow", region: "TX", elevationFt: ELEVATION_FT } as const;

export async function seedNewJob(world: DemoWorld): Promise<void> {
  await openJob(world, {
    ...PLACE,
    title: "New system for an addition",
    customerName: "Theodora Wexcombe-Pham",
    addressLine: "3301 Dune Primrose Drive",
    startupDue: "2026-12-18",
  });
}

/** Airflow set far too high for a humid climate: seen before anyone drives out. */
export async function seedHighAirflow(world: DemoWorld): Promise<void> {
  const job = await openJob(world, {
    ...PLACE,
    title: "Two-stage heat pump, airflow to decide",
    customerName: "Bartholomew Quay-Estrada",
    addressLine: "64 Oyster Bend",
    techs: ["tech"],
    startupDue: "2026-12-11",
  });
  await seedLargeHouse(world, job);
  await fill(world, job, "airflow_setup", "office", {
    ...DUCTS,
    firstStageAirflowSetting: "medium",
    secondStageAirflowSetting: "high",
  });
}

/** The second stage starts with the first, and a run-on gives back what the colder coil took. */
export async function seedContradictingControls(world: DemoWorld): Promise<void> {
  const job = await openJob(world, {
    ...PLACE,
    title: "Heat pump for a small house",
    customerName: "Euphemia Tran-Ludlow",
    addressLine: "9 Tern Court",
    techs: ["tech"],
    startupDue: "2026-12-09",
  });
  await fillAndSign(world, job, "load_summary", "office", {
    ...GULF_COAST,
    loadSource: "Room-by-room worksheet of the office (invented), 2026-10-12",
    sensibleCoolingBtuh: 17_200,
    latentCoolingBtuh: 4_900,
    heatingBtuh: 22_000,
    floorAreaFt2: 1_750,
    bedrooms: 2,
    houseHeightFt: 8.5,
    occupants: 2,
    leakageCfm50: 1_200,
    ventilationCfm: 50,
  });
  await fillAndSign(world, job, "equipment_selection", "office", {
    equipmentModelId: world.equipment.heldCoil.id,
    capacitySetting: "2 tons",
    auxiliaryHeatKw: 5,
    dehumidifierPintsPerDay: 0,
    reason: "A three-ton coil with two tons behind it dries well.",
  });
  await fillAndSign(world, job, "airflow_setup", "office", {
    ...DUCTS,
    firstStageAirflowSetting: "B",
    secondStageAirflowSetting: "B",
  });
  await fill(world, job, "control_setup", "office", {
    ...dryControls(world),
    colderCoilCooling: true,
    secondStageStartOffsetF: 1,
    fanRunOnAfterCoolingS: 60,
  });
}

/** Designed and assigned; the tech has read the first numbers on the phone. */
export async function seedStartupBegun(world: DemoWorld): Promise<void> {
  const job = await openJob(world, {
    ...PLACE,
    title: "Two-stage heat pump, startup today",
    customerName: "Ignatius Fairweather-Cho",
    addressLine: "220 Cordgrass Way",
    techs: ["tech"],
    startupDue: "2026-11-25",
    reviewDue: "2027-06-30",
  });
  await seedLargeHouse(world, job);
  await fillAndSign(world, job, "airflow_setup", "office", {
    ...DUCTS,
    firstStageAirflowSetting: "low",
    secondStageAirflowSetting: "medium",
  });
  await fillAndSign(world, job, "control_setup", "office", dryControls(world));
  await fill(world, job, "startup_record", "tech", {
    ...goodInstruments(world),
    outdoorDbF: 81.5,
    refrigerant: "R-454B",
    meteringDevice: "expansion valve",
    secondStabilisedMin: 12,
    secondAirflowCfm: 992,
    secondAirflowMethod: "flow plate",
    secondReturnDbF: 75.8,
    secondReturnWbF: 63.4,
    leftCapacitySetting: "3 tons",
  });
}

/** Read with a coarse pocket instrument: the numbers look fine and prove nothing. */
export async function seedUndecidedStartup(world: DemoWorld): Promise<void> {
  const model = world.equipment.heldCoil;
  const job = await openJob(world, {
    ...PLACE,
    title: "Heat pump for a two-storey house",
    customerName: "Seraphina Holloway-Diaz",
    addressLine: "15 Mangrove Steps",
    techs: ["secondTech"],
    startupDue: "2026-09-03",
    reviewDue: "2027-07-01",
  });
  await fillAndSign(world, job, "load_summary", "office", {
    ...GULF_COAST,
    loadSource: "Room-by-room worksheet of the office (invented), 2026-08-11",
    sensibleCoolingBtuh: 24_600,
    latentCoolingBtuh: 6_900,
    heatingBtuh: 35_000,
    floorAreaFt2: 2_750,
    bedrooms: 4,
    houseHeightFt: 17,
    occupants: 5,
    leakageCfm50: 2_100,
    ventilationCfm: 70,
  });
  await fillAndSign(world, job, "equipment_selection", "office", {
    equipmentModelId: model.id,
    capacitySetting: "3 tons",
    auxiliaryHeatKw: 8,
    dehumidifierPintsPerDay: 0,
    reason: "The load takes the whole three tons.",
  });
  await fillAndSign(world, job, "airflow_setup", "office", {
    ...DUCTS,
    firstStageAirflowSetting: "B",
    secondStageAirflowSetting: "D",
  });
  await fillAndSign(world, job, "control_setup", "office", {
    ...dryControls(world),
    colderCoilCooling: true,
  });
  await fillAndSign(world, job, "startup_record", "secondTech", {
    ...goodInstruments(world),
    airTemperatureInstrumentId: world.instruments.pocketHygrometer,
    outdoorDbF: 90,
    refrigerant: "R-454B",
    meteringDevice: "expansion valve",
    targetSubcoolingF: 9,
    targetSuperheatF: 10,
    supplyVoltage: 240,
    outdoorUnitAmps: 12.4,
    ratedAmps: 15.6,
    ...TIGHT_CIRCUIT,
    lineSetLengthFt: 40,
    chargeAddedOz: 15,
    evacuationMicrons: 400,
    ...stageReadings({
      model,
      capacitySetting: "3 tons",
      colderCoil: true,
      stage: "second",
      elevationFt: ELEVATION_FT,
      outdoorDbF: 90,
      returnDbF: 76,
      returnRhPct: 54,
      airflowCfm: 985,
      externalStaticInWc: 0.52,
      fanPowerW: 219,
      totalShare: 0.94,
      moistureShare: 0.88,
      superheatF: 11,
      subcoolingF: 8.6,
      moistureReadAs: "relative humidity",
      seed: 301,
    }),
    leftCapacitySetting: "3 tons",
    leftFirstStageAirflowSetting: "B",
    leftSecondStageAirflowSetting: "D",
    walkThroughDone: true,
  });
}

const DUCTS: Partial<AirflowSetupInputs> = {
  designExternalStaticInWc: 0.5,
  supplyDropInWc: 0.14,
  returnDropInWc: 0.11,
  filterDropInWc: 0.12,
  coilDropInWc: 0.13,
  otherDropInWc: 0,
  totalEffectiveLengthFt: 290,
};

async function seedLargeHouse(world: DemoWorld, job: JobId): Promise<void> {
  await fillAndSign(world, job, "load_summary", "office", {
    ...GULF_COAST,
    loadSource: "Room-by-room worksheet of the office (invented), 2026-10-05",
    sensibleCoolingBtuh: 24_300,
    latentCoolingBtuh: 6_600,
    heatingBtuh: 33_000,
    floorAreaFt2: 2_650,
    bedrooms: 4,
    houseHeightFt: 9,
    occupants: 4,
    leakageCfm50: 1_900,
    ventilationCfm: 80,
  });
  await fillAndSign(world, job, "equipment_selection", "office", {
    equipmentModelId: world.equipment.twoStage.id,
    capacitySetting: "3 tons",
    auxiliaryHeatKw: 5,
    dehumidifierPintsPerDay: 0,
    reason: "First stage for most of the year, second for the hottest afternoons.",
  });
}

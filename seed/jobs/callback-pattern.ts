import { logCallback } from "@/lib/services/callbacks";
import { dryControls, GULF_COAST, goodInstruments, TIGHT_CIRCUIT } from "../design-defaults";
import { openJob } from "../open-job";
import { fillAndSign } from "../stage-steps";
import { stageReadings } from "../startup-readings";
import type { DemoWorld } from "../world";

type House = {
  readonly customerName: string;
  readonly tap: "tap 2" | "tap 3" | "tap 4";
  readonly runOnS: 0 | 60 | 90;
  readonly tech: "tech" | "secondTech";
  readonly complaint: string | null;
  /** Whether a dehumidifier for mild, wet weather was sold with it. */
  readonly dehumidifier: boolean;
  /** 240 ft leaves the ducts a usable friction rate, 260 ft does not. */
  readonly effectiveLengthFt: 240 | 260;
};

/** Invented houses with one thing in common: only those on the highest airflow setting complain of humidity. */
const HOUSES: readonly House[] = [
  {
    customerName: "Ines Marlowe-Tabor",
    tap: "tap 2",
    runOnS: 0,
    tech: "tech",
    complaint: null,
    dehumidifier: true,
    effectiveLengthFt: 240,
  },
  {
    customerName: "Quincy Abernot",
    tap: "tap 4",
    runOnS: 0,
    tech: "tech",
    complaint: "Sticky in the evening.",
    dehumidifier: false,
    effectiveLengthFt: 260,
  },
  {
    customerName: "Petra Sandoval-Wick",
    tap: "tap 2",
    runOnS: 60,
    tech: "secondTech",
    complaint: null,
    dehumidifier: false,
    effectiveLengthFt: 260,
  },
  {
    customerName: "Rufus Okonjo-Hale",
    tap: "tap 4",
    runOnS: 60,
    tech: "secondTech",
    complaint: "Sheets feel damp.",
    dehumidifier: false,
    effectiveLengthFt: 240,
  },
  {
    customerName: "Mirela Fontaine-Dupree",
    tap: "tap 3",
    runOnS: 90,
    tech: "tech",
    complaint: null,
    dehumidifier: true,
    effectiveLengthFt: 240,
  },
  {
    customerName: "Tobiah Lindqvist-Shaw",
    tap: "tap 4",
    runOnS: 90,
    tech: "tech",
    complaint: "Cool but clammy.",
    dehumidifier: true,
    effectiveLengthFt: 260,
  },
  {
    customerName: "Anselm Greavey",
    tap: "tap 3",
    runOnS: 0,
    tech: "secondTech",
    complaint: null,
    dehumidifier: true,
    effectiveLengthFt: 240,
  },
  {
    customerName: "Delphine Rook-Amari",
    tap: "tap 2",
    runOnS: 0,
    tech: "tech",
    complaint: null,
    dehumidifier: true,
    effectiveLengthFt: 240,
  },
];
const CFM = { "tap 2": 800, "tap 3": 915, "tap 4": 1_060 } as const;
const ELEVATION_FT = 25;

/** Signed startups of a season, and the humid ones among them. */
export async function seedCallbackPattern(world: DemoWorld): Promise<void> {
  for (const [index, house] of HOUSES.entries()) await seedHouse(world, house, index);
}

async function seedHouse(world: DemoWorld, house: House, index: number): Promise<void> {
  const model = world.equipment.singleSpeed;
  const capacitySetting = "2.5 tons";
  const job = await openJob(world, {
    title: "Replace air conditioner",
    customerName: house.customerName,
    addressLine: `${20 + index} Spoonbill Court`,
    city: "Heronport",
    region: "TX",
    elevationFt: ELEVATION_FT,
    techs: [house.tech],
    startupDue: `2026-06-${String(8 + index).padStart(2, "0")}`,
  });
  await fillAndSign(world, job, "load_summary", "office", {
    ...GULF_COAST,
    loadSource: "Room-by-room worksheet of the office (invented)",
    sensibleCoolingBtuh: 20_000,
    latentCoolingBtuh: 5_200,
    heatingBtuh: 27_000,
    floorAreaFt2: 1_900,
    bedrooms: 3,
    houseHeightFt: 8.5,
    occupants: 3,
    leakageCfm50: 1_700,
    ventilationCfm: 55,
  });
  await fillAndSign(world, job, "equipment_selection", "office", {
    equipmentModelId: model.id,
    capacitySetting,
    auxiliaryHeatKw: 10,
    dehumidifierPintsPerDay: house.dehumidifier ? 155 : 0,
    dehumidifierAtHousePintsPerDay: house.dehumidifier ? 135 : null,
    reason: "Fits the load.",
  });
  await fillAndSign(world, job, "airflow_setup", "office", {
    secondStageAirflowSetting: house.tap,
    designExternalStaticInWc: 0.5,
    filterDropInWc: 0.15,
    coilDropInWc: 0.2,
    otherDropInWc: 0,
    totalEffectiveLengthFt: house.effectiveLengthFt,
  });
  await fillAndSign(world, job, "control_setup", "office", {
    ...dryControls(world),
    controlModelId: world.controls.oneStage,
    fanRunOnAfterCoolingS: house.runOnS,
    stepBackToFirstStage: false,
    fanWiredFor: "one stage",
  });
  await fillAndSign(world, job, "startup_record", house.tech, {
    ...goodInstruments(world),
    outdoorDbF: 91,
    refrigerant: "R-410A",
    meteringDevice: "expansion valve",
    targetSubcoolingF: 10,
    supplyVoltage: 240,
    outdoorUnitAmps: 10.5,
    ratedAmps: 13.1,
    ...TIGHT_CIRCUIT,
    lineSetLengthFt: 30,
    chargeAddedOz: 6,
    evacuationMicrons: 350,
    ...stageReadings({
      model,
      capacitySetting,
      colderCoil: false,
      stage: "second",
      elevationFt: ELEVATION_FT,
      outdoorDbF: 91,
      returnDbF: 75.5,
      returnRhPct: 54,
      airflowCfm: CFM[house.tap],
      externalStaticInWc: 0.5,
      fanPowerW: 240,
      totalShare: 0.98,
      moistureShare: 0.98,
      superheatF: 11,
      subcoolingF: 9.6,
      moistureReadAs: "wet bulb",
      seed: 400 + index,
    }),
    leftCapacitySetting: capacitySetting,
    leftSecondStageAirflowSetting: house.tap,
    walkThroughDone: true,
    notes: "Invented readings.",
  });
  const { complaint } = house;
  if (complaint === null && index % 4 !== 0) return;
  await logCallback(world.scopes.office, {
    jobId: job,
    kind: complaint === null ? "noise" : "too_humid",
    reportedOn: "2026-08-12",
    reportedByName: house.customerName,
    complaint: complaint ?? "A hum at night (invented).",
  });
}

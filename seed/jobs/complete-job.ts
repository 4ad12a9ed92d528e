import { cleanStartup } from "../clean-startup";
import { dryControls, GULF_COAST } from "../design-defaults";
import { importGeneratedLog } from "../generated-log";
import { DRY_HOUSE } from "../logged-houses";
import { openJob } from "../open-job";
import { fillAndSign } from "../stage-steps";
import type { DemoWorld } from "../world";
import { seedOptions } from "./complete-options";

const ELEVATION_FT = 30;
const CAPACITY_SETTING = "2.5 tons";

/** From the load to a dry summer: every link of the chain signed and holding. */
export async function seedCompleteJob(world: DemoWorld): Promise<void> {
  const model = world.equipment.heldCoil;
  const job = await openJob(world, {
    title: "Replace heat pump, one-storey house",
    customerName: "Łukasz O'Neil-Nguyễn",
    addressLine: "118 Pelican Row",
    city: "Heronport",
    region: "TX",
    elevationFt: ELEVATION_FT,
    techs: ["tech"],
    startupDue: "2026-07-21",
    reviewDue: "2026-08-28",
  });
  await fillAndSign(world, job, "load_summary", "office", {
    ...GULF_COAST,
    loadSource: "Room-by-room worksheet of the office (invented), 2026-06-30",
    sensibleCoolingBtuh: 21_600,
    latentCoolingBtuh: 6_200,
    heatingBtuh: 29_000,
    floorAreaFt2: 2_300,
    bedrooms: 3,
    houseHeightFt: 9,
    occupants: 4,
    leakageCfm50: 1_650,
    ventilationCfm: 65,
  });
  await fillAndSign(world, job, "equipment_selection", "office", {
    equipmentModelId: model.id,
    capacitySetting: CAPACITY_SETTING,
    auxiliaryHeatKw: 5,
    dehumidifierPintsPerDay: 155,
    dehumidifierAtHousePintsPerDay: 135,
    reason: "Set half a ton below its nameplate: enough for the load, and it runs long enough to dry.",
  });
  await fillAndSign(world, job, "airflow_setup", "office", {
    firstStageAirflowSetting: "B",
    secondStageAirflowSetting: "C",
    designExternalStaticInWc: 0.5,
    supplyDropInWc: 0.14,
    returnDropInWc: 0.11,
    filterDropInWc: 0.12,
    coilDropInWc: 0.13,
    otherDropInWc: 0,
    totalEffectiveLengthFt: 280,
  });
  await fillAndSign(world, job, "control_setup", "office", {
    ...dryControls(world),
    colderCoilCooling: true,
  });
  await seedOptions(world, job);
  await fillAndSign(world, job, "startup_record", "tech", {
    ...cleanStartup(world, {
      model,
      capacitySetting: CAPACITY_SETTING,
      elevationFt: ELEVATION_FT,
      seed: 101,
    }),
    notes: "Read on a hot afternoon in July (invented).",
  });
  const logImportId = await importGeneratedLog(world, job, "office", DRY_HOUSE);
  await fillAndSign(world, job, "humidity_review", "office", {
    logImportId,
    conclusion: "kept",
    nextLook: "2027-06-15",
    notes: "The log is invented: two generated weeks in August.",
  });
}

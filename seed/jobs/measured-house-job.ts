import { readFile } from "node:fs/promises";
import path from "node:path";
import type { LogMapping } from "@/lib/schemas/log-file";
import { importLog } from "@/lib/services/import-log";
import { CENTRAL_INDIANA, dryControls } from "../design-defaults";
import { openJob } from "../open-job";
import { fill, fillAndSign } from "../stage-steps";
import type { DemoWorld } from "../world";

const FILE = "measured-house-2016-a.csv";
const CREDIT =
  "The log is a real one, of a house in Belgium in February and March 2016: Appliances Energy Prediction data set by Luis Candanedo, UCI Machine Learning Repository, CC BY 4.0 (https://creativecommons.org/licenses/by/4.0/), rows unchanged. Its clock is read as Indiana time.";

/** One room as indoors, the nearest weather station as outdoors. */
const MAPPING: LogMapping = {
  version: 1,
  timeHeading: "date",
  timeOfDayHeading: null,
  dateOrder: "day-month-year",
  columns: [
    { heading: "T1", channel: "indoorF", unit: "°C" },
    { heading: "RH_1", channel: "indoorRhPct", unit: "%" },
    { heading: "T_out", channel: "outdoorF", unit: "°C" },
    { heading: "RH_out", channel: "outdoorRhPct", unit: "%" },
  ],
  onlyWhere: null,
};

/** Invented job, measured log: a house in its heating season, dry, which says nothing yet about summer. */
export async function seedMeasuredHouseJob(world: DemoWorld): Promise<void> {
  const job = await openJob(world, {
    title: "Heat pump, review with a measured log",
    customerName: "Clementine Orchard-Bajwa",
    addressLine: "51 Millrace Path",
    city: "Millgate Junction",
    region: "IN",
    elevationFt: 790,
    techs: ["tech"],
    startupDue: "2026-12-03",
    reviewDue: "2027-07-15",
    note: CREDIT,
  });
  await fillAndSign(world, job, "load_summary", "office", {
    ...CENTRAL_INDIANA,
    loadSource: "Room-by-room worksheet of the office (invented), 2026-01-20",
    sensibleCoolingBtuh: 16_800,
    latentCoolingBtuh: 4_700,
    heatingBtuh: 34_000,
    floorAreaFt2: 1_850,
    bedrooms: 3,
    houseHeightFt: 16.4,
    occupants: 4,
    leakageCfm50: 900,
    ventilationCfm: 75,
  });
  await fillAndSign(world, job, "equipment_selection", "office", {
    equipmentModelId: world.equipment.heldCoil.id,
    capacitySetting: "2 tons",
    auxiliaryHeatKw: 8,
    dehumidifierPintsPerDay: 0,
    reason: "Small summer load, large winter load: set low for cooling.",
  });
  await fillAndSign(world, job, "airflow_setup", "office", {
    firstStageAirflowSetting: "B",
    secondStageAirflowSetting: "B",
    designExternalStaticInWc: 0.45,
    filterDropInWc: 0.1,
    coilDropInWc: 0.12,
    otherDropInWc: 0,
    totalEffectiveLengthFt: 260,
  });
  await fillAndSign(world, job, "control_setup", "office", {
    ...dryControls(world),
    colderCoilCooling: true,
  });
  const bytes = await readFile(path.join(import.meta.dirname, "../house-log", FILE));
  const { importId } = await importLog(world.scopes.office, {
    jobId: job,
    fileName: FILE,
    bytes,
    sourceName: "Measured house, rooms in °C",
    mapping: MAPPING,
  });
  await fill(world, job, "humidity_review", "office", {
    logImportId: importId,
    conclusion: "open",
    nextLook: "2027-07-15",
    notes: `A heating-season log cannot show summer humidity. ${CREDIT}`,
  });
}

import { readFile } from "node:fs/promises";
import path from "node:path";
import type { JobId } from "@/lib/domain/ids";
import { houseFromLoadSummary, houseWithFactors } from "@/lib/engineering/simulation";
import { parseEpw } from "@/lib/engineering/weather";
import { jobView } from "@/lib/services/job-view";
import { designToHold } from "@/lib/services/lived-forecast";
import { cleanStartup } from "../clean-startup";
import { dryControls, GULF_COAST } from "../design-defaults";
import { importInventedLog } from "../generated-log";
import { openJob } from "../open-job";
import { simulatedLog } from "../simulated-log";
import { fill, fillAndSign } from "../stage-steps";
import type { DemoWorld } from "../world";

const ELEVATION_FT = 35;
const CAPACITY_SETTING = "2.5 tons";
/** What the house leaks over what its load summary says. */
const TRULY_LEAKIER = 2.6;

/** Everything set right, and yet humid: the house leaks more than the blower door said before the attic was opened. */
export async function seedLeakyJob(world: DemoWorld): Promise<void> {
  const model = world.equipment.heldCoil;
  const job = await openJob(world, {
    title: "Replace heat pump, damp in the evenings",
    customerName: "Cordelia Lindqvist-Abara",
    addressLine: "41 Spoonbill Reach",
    city: "Saltmarrow",
    region: "TX",
    elevationFt: ELEVATION_FT,
    techs: ["tech"],
    startupDue: "2026-07-14",
    reviewDue: "2026-09-04",
  });
  await fillAndSign(world, job, "load_summary", "office", {
    ...GULF_COAST,
    loadSource: "Room-by-room worksheet of the office (invented), 2026-06-22",
    sensibleCoolingBtuh: 22_400,
    latentCoolingBtuh: 6_400,
    heatingBtuh: 30_000,
    floorAreaFt2: 2_250,
    bedrooms: 3,
    houseHeightFt: 8.5,
    occupants: 4,
    leakageCfm50: 1_500,
    ventilationCfm: 60,
  });
  await fillAndSign(world, job, "equipment_selection", "office", {
    equipmentModelId: model.id,
    capacitySetting: CAPACITY_SETTING,
    auxiliaryHeatKw: 5,
    dehumidifierPintsPerDay: 0,
    reason: "Set half a ton below its nameplate, as in the houses beside it.",
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
    totalEffectiveLengthFt: 270,
  });
  await fillAndSign(world, job, "control_setup", "office", {
    ...dryControls(world),
    colderCoilCooling: true,
  });
  await fillAndSign(world, job, "startup_record", "tech", {
    ...cleanStartup(world, {
      model,
      capacitySetting: CAPACITY_SETTING,
      elevationFt: ELEVATION_FT,
      seed: 301,
    }),
    notes: "Read on a hot afternoon in July (invented).",
  });
  const logImportId = await importLeakyLog(world, job);
  await fill(world, job, "humidity_review", "office", {
    logImportId,
    notes:
      "The log is invented: three simulated weeks in August, in a leakier house than the load summary has.",
  });
}

/** Three weeks as this job's own records have them, but for the leaks. */
async function importLeakyLog(world: DemoWorld, jobId: JobId): Promise<string> {
  const { context } = await jobView(world.scopes.office, jobId);
  const design = designToHold(context);
  if (!design.ready)
    throw new Error(`The leaky job is not complete: ${design.missing.map(({ text }) => text)}`);
  const { load, changed, option, humidityLimitPct } = design.value.inputs;
  const weather = parseEpw(
    await readFile(path.join(import.meta.dirname, "../weather/houston-2a.epw"), "utf8"),
  );
  const { house } = houseFromLoadSummary(load, weather, changed.house);
  const leaky = houseWithFactors(house, {
    conductance: 1,
    leakage: TRULY_LEAKIER,
    gains: 1,
    moisture: 1,
    buffer: 1,
  });
  const { system, controls, ventilation, dehumidifier } = option;
  const when = { firstDay: "2026-08-10", days: 21, zone: "America/Chicago" } as const;
  const csv = simulatedLog(
    { house: leaky, system, controls, ventilation, dehumidifier, weather, humidityLimitPct },
    when,
  );
  return importInventedLog(world, jobId, "office", {
    csv,
    firstDay: when.firstDay,
    stages: system.stages.length,
  });
}

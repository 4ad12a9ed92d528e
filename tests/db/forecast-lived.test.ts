import { readFileSync } from "node:fs";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { catalog } from "@/lib/db/catalog";
import { closeDatabase } from "@/lib/db/client";
import { forecastsLived } from "@/lib/db/forecasts-lived";
import type { JobId } from "@/lib/domain/ids";
import { houseFromLoadSummary, houseWithFactors } from "@/lib/engineering/simulation";
import { parseEpw } from "@/lib/engineering/weather";
import { holdForecast } from "@/lib/services/hold-forecast";
import { importLog } from "@/lib/services/import-log";
import { jobView } from "@/lib/services/job-view";
import { designToHold } from "@/lib/services/lived-forecast";
import { addWeatherFile } from "@/lib/services/weather";
import { heldCoilHeatPump } from "@/seed/catalog/equipment";
import { simulatedLog } from "@/seed/simulated-log";
import { type Crew, given, makeCrew } from "../support/people";
import { LOAD, openJob, refusedBy, save } from "../support/service-jobs";

const EPW = readFileSync(new URL("../../seed/weather/houston-2a.epw", import.meta.url));

let crew: Crew;
let jobId: JobId;
let importId: string;
let said: string;
const steps: string[] = [];

beforeAll(async () => {
  crew = await makeCrew();
  const { office } = crew;
  const modelId = await catalog(office).addEquipment(heldCoilHeatPump);
  const weatherFileId = await addWeatherFile(office, {
    name: "Coast",
    sourceNote: "see seed/weather",
    bytes: EPW,
  });
  jobId = await openJob(office, { weatherFileId });
  await save(office, jobId, "load_summary", {
    ...LOAD,
    houseHeightFt: 8.5,
    ventilationCfm: 60,
    leakageCfm50: 1_400,
    leakageKnownBy: "measured",
  });
  await save(office, jobId, "equipment_selection", {
    equipmentModelId: modelId,
    capacitySetting: "2 tons",
    auxiliaryHeatKw: 10,
    dehumidifierPintsPerDay: 0,
  });
  await save(office, jobId, "airflow_setup", {
    firstStageAirflowSetting: "A",
    secondStageAirflowSetting: "B",
    designExternalStaticInWc: 0.5,
  });
  await save(office, jobId, "control_setup", {
    coolingSetpointF: 75,
    firstStageStartOffsetF: 1,
    secondStageStartOffsetF: 2,
    minimumCompressorRunMin: 10,
    minimumCompressorRestMin: 5,
    stepBackToFirstStage: true,
    coolingPastSetpointF: 0,
    fanRunOnAfterCoolingS: 0,
    fanBetweenCalls: "off",
  });
  importId = await importOf(3);
  await save(office, jobId, "humidity_review", { logImportId: importId });
  said = await holdForecast(office, jobId, importId, async (done, total) => {
    steps.push(`${done} of ${total}`);
  });
}, 120_000);
afterAll(closeDatabase);

/** Ten days of this job's own house, leaking so much more. */
async function importOf(leakage: number): Promise<string> {
  const design = designToHold((await jobView(crew.office, jobId)).context);
  if (!design.ready) throw new Error(design.missing.map(({ text }) => text).join("; "));
  const { load, option, humidityLimitPct } = design.value.inputs;
  const weather = parseEpw(new TextDecoder().decode(EPW));
  const { house } = houseFromLoadSummary(load, weather);
  const factors = { conductance: 1, leakage, gains: 1, moisture: 1, buffer: 1 };
  const input = { ...option, house: houseWithFactors(house, factors), weather, humidityLimitPct };
  const csv = simulatedLog(input, { firstDay: "2026-08-10", days: 10, zone: "America/Chicago" });
  const imported = await importLog(crew.office, {
    jobId,
    fileName: "leaky.csv",
    bytes: new TextEncoder().encode(csv),
    sourceName: "Logger",
    mapping: {
      version: 1,
      timeHeading: "Local time",
      timeOfDayHeading: null,
      dateOrder: null,
      columns: [
        { heading: "Indoor temperature F", channel: "indoorF", unit: "°F" },
        { heading: "Indoor RH %", channel: "indoorRhPct", unit: "%" },
        { heading: "Outdoor temperature F", channel: "outdoorF", unit: "°F" },
        { heading: "Outdoor RH %", channel: "outdoorRhPct", unit: "%" },
        { heading: "Cooling stage 1 seconds", channel: "firstStageShare", unit: "seconds" },
        { heading: "Cooling stage 2 seconds", channel: "secondStageShare", unit: "seconds" },
      ],
      onlyWhere: null,
    },
  });
  return imported.importId;
}

describe("a forecast held against a log", () => {
  test("is kept with the log, step by step, and becomes a finding and a ledger line", async () => {
    expect(said).toMatch(/h above the limit lived, .* h forecast/);
    expect(steps[0]).toMatch(/^1 of /);
    const { context, evaluation } = await jobView(crew.office, jobId);
    const lived = given(context.lived);
    expect(lived).toMatchObject({
      importId,
      outdated: false,
      weather: "the log's own",
      weatherName: "Coast",
    });
    const { hoursAboveLimit } = lived.forecast;
    expect(lived.lived.hoursAboveLimit).toBeGreaterThan(hoursAboveLimit.high);
    const found = evaluation.findings.humidity_review.find(
      (one) => one.ruleId === "simulation.forecast-lived",
    );
    expect(found?.verdict).toBe("falls short");
    expect(found?.statement).toMatch(/leakier than assumed/);
    expect(evaluation.ledger.some((line) => line.key === "forecast-lived")).toBe(true);
    expect(given(await forecastsLived(crew.office).picture(importId)).measuredF).toHaveLength(240);
  });

  test("held again it replaces what was kept", async () => {
    await holdForecast(crew.office, jobId, importId, async () => undefined);
    expect(given((await jobView(crew.office, jobId)).context.lived).outdated).toBe(false);
  });

  test("is outdated once the records say otherwise", async () => {
    await save(crew.office, jobId, "control_setup", { ...(await controls()), coolingSetpointF: 74 }, 1);
    const { context, evaluation } = await jobView(crew.office, jobId);
    expect(given(context.lived).outdated).toBe(true);
    const found = evaluation.findings.humidity_review.find(
      (one) => one.ruleId === "simulation.forecast-lived",
    );
    expect(found?.statement).toMatch(/records have changed since/);
  });

  test("belongs to its company, and to techs the job is assigned to", async () => {
    const other = await makeCrew();
    expect(await forecastsLived(other.owner).find(importId)).toBeNull();
    expect(await forecastsLived(crew.tech).find(importId)).toBeNull();
    const nothing = async () => undefined;
    expect(await refusedBy(holdForecast(other.owner, jobId, importId, nothing))).toMatchObject({
      code: "NOT_FOUND",
    });
  });
});

async function controls() {
  return (await jobView(crew.office, jobId)).records.control_setup?.inputs ?? {};
}

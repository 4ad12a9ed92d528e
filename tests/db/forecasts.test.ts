import { readFileSync } from "node:fs";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { catalog } from "@/lib/db/catalog";
import { closeDatabase } from "@/lib/db/client";
import { forecasts } from "@/lib/db/forecasts";
import { weatherFiles } from "@/lib/db/weather-files";
import { workItems } from "@/lib/db/work-items";
import type { ForecastChanges } from "@/lib/domain/forecast";
import { asId } from "@/lib/domain/ids";
import { forecastYears, gatherForecast, prepareForecast, stableText } from "@/lib/engineering/simulation";
import { chooseOption } from "@/lib/services/choose-option";
import { jobView } from "@/lib/services/job-view";
import { forecastInputOf, keepForecast } from "@/lib/services/keep-forecast";
import { addOption, optionsView } from "@/lib/services/options";
import { addWeatherFile } from "@/lib/services/weather";
import { readWeatherYear } from "@/lib/services/weather-year";
import { heldCoilHeatPump } from "@/seed/catalog/equipment";
import { type Crew, given, makeCrew } from "../support/people";
import { LOAD, openJob, save } from "../support/service-jobs";

let crew: Crew;
let modelId: string;
let weatherFileId: string;
let keptJob = "";
beforeAll(async () => {
  crew = await makeCrew();
  modelId = await catalog(crew.office).addEquipment(heldCoilHeatPump);
  weatherFileId = await addWeatherFile(crew.office, {
    name: "Coast",
    sourceNote: "see seed/weather",
    bytes: readFileSync(new URL("../../seed/weather/houston-2a.epw", import.meta.url)),
  });
}, 60_000);
afterAll(closeDatabase);

const CONTROLS = {
  coolingSetpointF: 75,
  firstStageStartOffsetF: 1,
  secondStageStartOffsetF: 2,
  minimumCompressorRunMin: 10,
  minimumCompressorRestMin: 5,
  stepBackToFirstStage: true,
  coolingPastSetpointF: 0,
  fanRunOnAfterCoolingS: 0,
  fanBetweenCalls: "off",
} as const;
const HOUSE = {
  ...LOAD,
  houseHeightFt: 8.5,
  ventilationCfm: 60,
  leakageCfm50: 1_400,
  leakageKnownBy: "measured",
};
const SELECTED = {
  equipmentModelId: "",
  capacitySetting: "2 tons",
  auxiliaryHeatKw: 10,
  dehumidifierPintsPerDay: 0,
};
const AIRFLOW = {
  firstStageAirflowSetting: "A",
  secondStageAirflowSetting: "B",
  designExternalStaticInWc: 0.5,
};

async function designedJob() {
  const { office } = crew;
  const jobId = await openJob(office, { weatherFileId });
  await save(office, jobId, "load_summary", HOUSE);
  await save(office, jobId, "equipment_selection", { ...SELECTED, equipmentModelId: modelId });
  await save(office, jobId, "airflow_setup", AIRFLOW);
  await save(office, jobId, "control_setup", CONTROLS);
  return jobId;
}
const keep = (jobId: string, changed: ForecastChanges | null = null) =>
  keepForecast(crew.office, jobId, changed, async () => undefined);
const inForce = async (jobId: string) => given((await jobView(crew.office, jobId)).context.forecast);

describe("a job's kept forecast", () => {
  test("holds ranges, assumptions and who kept it; run again from what is kept it is the same bytes", async () => {
    const { office } = crew;
    const jobId = await designedJob();
    keptJob = jobId;
    expect(await keep(jobId)).toMatch(/^Kept: [\d,]+ dry-hours/);
    const kept = given(await forecasts(office).whole(asId<"job">(jobId)));
    const { dryHours, hoursAboveLimit } = kept.figures.ranges;
    expect(dryHours.central + hoursAboveLimit.central).toBeCloseTo(8_760, 6);
    expect(dryHours.low).toBeLessThan(dryHours.central);
    expect(kept.figures.hoursAboveLimitByMonth).toHaveLength(12);
    expect(kept.result.houseAssumptions.map((one) => one.name)).toContain("moistureCapacitanceMultiple");
    expect(kept).toMatchObject({ optionLabel: "As the records stand", members: 10, supersededAt: null });
    expect(kept.keptByName).not.toBe("");

    const file = given(await weatherFiles(office).find(weatherFileId));
    const prepared = prepareForecast(forecastInputOf(kept.inputs, await readWeatherYear(office, file)));
    const [again] = gatherForecast(prepared, [...forecastYears(prepared)]).options;
    const { name: _n, central: _c, pictures: _p, ...figures } = given(again);
    expect(stableText(kept.figures)).toBe(stableText(figures));
  }, 60_000);

  test("is stale once the design changes, in force again when it is changed back, superseded when kept anew", async () => {
    const jobId = await designedJob();
    await keep(jobId);
    const first = await inForce(jobId);
    expect(first.stale).toBe(false);
    await save(crew.office, jobId, "airflow_setup", { ...AIRFLOW, secondStageAirflowSetting: "E" }, 1);
    expect((await inForce(jobId)).stale).toBe(true);
    await save(crew.office, jobId, "airflow_setup", AIRFLOW, 2);
    expect((await inForce(jobId)).stale).toBe(false);

    await keep(jobId, { house: { householdPintsPerDay: 30 }, system: {} });
    const second = await inForce(jobId);
    expect(second.id).not.toBe(first.id);
    expect(second.stale).toBe(false);
    // More water given off inside: fewer dry-hours.
    expect(second.figures.ranges.dryHours.central).toBeLessThan(first.figures.ranges.dryHours.central);
    const all = await forecasts(crew.office).list(asId<"job">(jobId));
    expect(all.map((one) => one.supersededAt === null)).toEqual([true, false]);
    // What was changed once stays changed, until somebody says otherwise.
    await keep(jobId);
    expect((await inForce(jobId)).inputs.changed.house).toEqual({ householdPintsPerDay: 30 });
  }, 60_000);

  test("says what is missing and keeps nothing", async () => {
    const { office } = crew;
    const bare = await openJob(office, { weatherFileId });
    await save(office, bare, "load_summary", LOAD);
    expect(await keep(bare)).toMatch(
      /^Not run\. Still needed: .*Height of the house.*Equipment selection: Equipment/,
    );
    expect(await keep(await openJob(office))).toBe("Not run: the job has no weather year yet.");
    expect(await forecasts(office).list(asId<"job">(bare))).toEqual([]);
  });

  test("is asked for when an option is chosen", async () => {
    const { office } = crew;
    const jobId = await designedJob();
    const optionId = await addOption(office, { jobId, label: "Small and slow", copyOf: null });
    await addOption(office, { jobId, label: "Beside it", copyOf: optionId });
    const { version } = given((await optionsView(office, jobId)).options[0]);
    const chosen = { jobId, optionId, expectedVersion: version, reason: "dry", reopenSigned: false };
    await chooseOption(office, chosen);
    const waiting = await workItems(office).unfinished("keep forecast");
    expect(waiting?.title).toMatch(/^Forecast of “Small and slow”, job \d+$/);
  }, 60_000);

  test("is nobody else's: not another company's, not a tech's who has no such job", async () => {
    const jobId = asId<"job">(keptJob);
    const other = await makeCrew();
    expect(await forecasts(crew.office).inForce(jobId)).not.toBeNull();
    for (const scope of [other.office, crew.tech]) expect(await forecasts(scope).inForce(jobId)).toBeNull();
  });
});

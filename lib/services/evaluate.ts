import { catalog } from "@/lib/db/catalog";
import { company } from "@/lib/db/company";
import { forecasts } from "@/lib/db/forecasts";
import { instruments } from "@/lib/db/instruments";
import type { JobDerived } from "@/lib/db/job-derived";
import { judgedWith } from "@/lib/db/judged-with";
import { type WeatherFile, weatherFiles } from "@/lib/db/weather-files";
import { attentionReasons } from "@/lib/domain/attention";
import type { ControlModel, Instrument } from "@/lib/domain/catalog";
import { type Evaluation, evaluateJob, type JobContext, logContextOf } from "@/lib/domain/evaluate";
import type { KeptForecast } from "@/lib/domain/forecast/kept";
import { asId, isUuid } from "@/lib/domain/ids";
import { type Job, type JobRecords, worstVerdict } from "@/lib/domain/jobs";
import { type Limits, limitsInForce } from "@/lib/domain/limits";
import type { TenantScope } from "@/lib/domain/scope";
import { emptyStage, STAGES, type StageInputs } from "@/lib/domain/stages";
import { heldAgainstDesign } from "./designed-forecast";
import { livedInForce } from "./lived-forecast";
import { logSummary } from "./log-summary";

/** What the findings of every job of a company follow from: read once, however many jobs are looked at. */
export type CompanyFacts = {
  readonly controls: readonly ControlModel[];
  readonly instruments: readonly Instrument[];
  readonly limits: Limits;
  readonly weather: readonly WeatherFile[];
};

export async function companyFacts(scope: TenantScope): Promise<CompanyFacts> {
  // One after the other: inside one transaction they share one connection.
  return {
    instruments: await instruments(scope).list("all"),
    limits: limitsInForce(await company(scope).limitOverrides()),
    // Retired ones and old versions too: a job's findings do not change because the catalog moved on.
    controls: await catalog(scope).listControls("all"),
    weather: await weatherFiles(scope).list(),
  };
}

/** The same for one job, with its forecast in force: of thermostats and weather only what it rests on. */
async function factsOf(
  scope: TenantScope,
  { id, weatherFileId }: Job,
  controlModelId: string | null,
): Promise<CompanyFacts & { readonly kept: KeptForecast | null }> {
  const own = await judgedWith(scope, id);
  const control =
    controlModelId !== null && isUuid(controlModelId)
      ? await catalog(scope).findControl(asId<"control model">(controlModelId))
      : null;
  const weather = await weatherFiles(scope).find(weatherFileId);
  return {
    instruments: own.instruments,
    limits: limitsInForce(own.limitOverrides),
    controls: control ? [control] : [],
    weather: weather ? [weather] : [],
    kept: own.forecast,
  };
}

/** Reads everything a job's findings follow from. */
export async function jobContext(
  scope: TenantScope,
  job: Job,
  records: JobRecords,
  facts?: CompanyFacts,
): Promise<JobContext> {
  const inputs = Object.fromEntries(
    STAGES.map((stage) => [stage, records[stage]?.inputs ?? emptyStage(stage)]),
  ) as unknown as StageInputs;
  const { equipmentModelId } = inputs.equipment_selection;
  const { controlModelId } = inputs.control_setup;
  const { logImportId } = inputs.humidity_review;
  const model =
    equipmentModelId !== null && isUuid(equipmentModelId)
      ? await catalog(scope).findEquipment(asId<"equipment model">(equipmentModelId))
      : null;
  const known = facts
    ? { ...facts, kept: await forecasts(scope).inForce(job.id) }
    : await factsOf(scope, job, controlModelId);
  const context: JobContext = {
    elevationFt: job.home.elevationFt,
    inputs,
    model,
    controlStages: known.controls.find((one) => one.id === controlModelId)?.data.stages ?? null,
    instruments: known.instruments,
    limits: known.limits,
    weather: known.weather.find((one) => one.id === job.weatherFileId)?.design ?? null,
    log: null,
    forecast: null,
    lived: null,
    measuredOn: records.startup_record?.updatedAt.slice(0, 10) ?? null,
  };
  const weatherSha256 = known.weather.find((one) => one.id === job.weatherFileId)?.sha256 ?? null;
  const forecast = heldAgainstDesign(known.kept, context, weatherSha256);
  if (logImportId === null) return { ...context, forecast };
  // What the house lived is held against what the records before it say.
  const asked = logContextOf(context, evaluateJob(context));
  const log = await logSummary(scope, job, logImportId, asked);
  const lived = log && (await livedInForce(scope, logImportId, { ...context, forecast }, weatherSha256));
  return { ...context, forecast, log, lived };
}

export async function evaluateRecords(
  scope: TenantScope,
  job: Job,
  records: JobRecords,
): Promise<Evaluation> {
  return evaluateJob(await jobContext(scope, job, records));
}

/** What lists and views across jobs keep of an evaluation. Facts count only what is signed. */
export function deriveJob(job: Job, records: JobRecords, evaluation: Evaluation): JobDerived {
  const begun = STAGES.filter((stage) => records[stage] !== null);
  return {
    currentStage: STAGES.find((stage) => records[stage]?.state !== "signed") ?? null,
    verdict: worstVerdict(begun.flatMap((stage) => evaluation.findings[stage])),
    attention: attentionReasons(job, records, evaluation),
    ledger: evaluation.ledger,
    facts: evaluation.facts,
    engineVersion: evaluation.engineVersion,
  };
}

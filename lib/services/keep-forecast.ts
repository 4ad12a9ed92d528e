import { setImmediate as breathe } from "node:timers/promises";
import { forecasts } from "@/lib/db/forecasts";
import { options } from "@/lib/db/options";
import { stageRecords } from "@/lib/db/stage-records";
import { type WeatherFile, weatherFiles } from "@/lib/db/weather-files";
import { withTenant } from "@/lib/db/with-tenant";
import { workItems } from "@/lib/db/work-items";
import {
  FORECAST_MEMBERS,
  FORECAST_SEED,
  FORECAST_VERSION,
  type ForecastChanges,
  type KeptInputs,
  NO_CHANGES,
} from "@/lib/domain/forecast";
import type { JobId } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import {
  forecastYears,
  gatherForecast,
  type MemberYear,
  type OptionForecast,
  type PreparedForecast,
  prepareForecast,
} from "@/lib/engineering/simulation";
import type { Weather } from "@/lib/engineering/weather";
import type { KeepForecastInput } from "@/lib/schemas/forecast";
import { designedForecast, designHash } from "./designed-forecast";
import { jobContext } from "./evaluate";
import { getJob } from "./jobs";
import { judgeJob } from "./judge-again";
import { readWeatherYear } from "./weather-year";

/** Asks for the design's forecast to be run and kept in the background, in the transaction that changes the design. */
export async function queueForecast(
  scope: TenantScope,
  jobId: JobId,
  what: string,
  changed: ForecastChanges | null = null,
): Promise<void> {
  await workItems(scope).add({
    task: "keep forecast",
    title: `Forecast of ${what}`.slice(0, 200),
    input: { jobId, changed },
    // Asked for twice with other assumptions, the last one counts: both run, in their order.
    ...(changed === null ? { key: jobId } : {}),
  });
}

/** Asks for a forecast of the records as they stand, with the assumptions as they are set. */
export function askForForecast(scope: TenantScope, { jobId, changed }: KeepForecastInput): Promise<void> {
  return withTenant(scope, async () => {
    const job = await getJob(scope, jobId);
    await queueForecast(scope, job.id, `job ${job.number}`, defined(changed));
  });
}

function defined({ house, system }: KeepForecastInput["changed"]): ForecastChanges {
  const only = (all: Readonly<Record<string, number | undefined>>) =>
    Object.fromEntries(Object.entries(all).filter(([, value]) => value !== undefined));
  return { house: only(house), system: only(system) };
}

/**
 * Runs the forecast of a job's design as its records stand, and keeps it in place of the one before. What is kept is what was run: when
 * the records change meanwhile it is stale from the start.
 *
 * @param changed - Assumptions set otherwise; `null` keeps those of the forecast before.
 * @returns What came of it, in words.
 */
export async function keepForecast(
  scope: TenantScope,
  jobId: string,
  changed: ForecastChanges | null,
  report: (done: number, total: number) => Promise<void>,
): Promise<string> {
  const design = await designOf(scope, jobId, changed);
  if (typeof design === "string") return design;
  const { file, inputs, assumptions } = design;
  const weather = await readWeatherYear(scope, file);
  const prepared = prepareForecast(forecastInputOf(inputs, weather));
  const option = await runAll(prepared, report);
  const { name: _name, central, pictures, ...figures } = option;
  await withTenant(scope, async () => {
    await stageRecords(scope).lock(design.jobId);
    await forecasts(scope).keep({
      jobId: design.jobId,
      optionId: design.optionId,
      optionLabel: inputs.option.name,
      weatherFileId: file.id,
      weatherSha256: file.sha256,
      inputsHash: designHash(inputs, file.sha256),
      engineVersion: FORECAST_VERSION,
      seed: FORECAST_SEED,
      members: FORECAST_MEMBERS,
      humidityLimitPct: inputs.humidityLimitPct,
      inputs,
      figures,
      result: {
        houseAssumptions: prepared.ensemble.assumptions,
        systemAssumptions: assumptions,
        uncertain: prepared.ensemble.uncertain,
        central,
        // The minutes of the hot day can be run again; kept they would be most of the row.
        pictures: { ...pictures, hotDay: { ...pictures.hotDay, minutes: null } },
      },
    });
  });
  await judgeJob(scope, design.jobId);
  return `Kept: ${Math.round(figures.ranges.dryHours.central).toLocaleString("en-US")} dry-hours of the year.`;
}

/** The input of the engine behind a kept forecast: run again it gives the same bytes. */
export function forecastInputOf(inputs: KeptInputs, weather: Weather) {
  const { load, changed, option, humidityLimitPct } = inputs;
  return {
    house: { kind: "load summary", load, changed: changed.house },
    weather,
    options: [option],
    humidityLimitPct,
    members: FORECAST_MEMBERS,
    seed: FORECAST_SEED,
  } as const;
}

type Design = {
  readonly jobId: JobId;
  readonly optionId: string | null;
  readonly file: WeatherFile;
  readonly inputs: KeptInputs;
  readonly assumptions: Extract<ReturnType<typeof designedForecast>, { ready: true }>["value"]["assumptions"];
};

function designOf(scope: TenantScope, id: string, changed: ForecastChanges | null): Promise<Design | string> {
  return withTenant(scope, async () => {
    const job = await getJob(scope, id);
    const context = await jobContext(scope, job, await stageRecords(scope).latest(job.id));
    const file = await weatherFiles(scope).find(job.weatherFileId);
    if (file === null) return "Not run: the job has no weather year yet.";
    const choice = await options(scope).choice(job.id);
    const name = choice?.label ?? "As the records stand";
    const found = designedForecast(context, name, changed ?? context.forecast?.inputs.changed ?? NO_CHANGES);
    if (!found.ready) return `Not run. Still needed: ${found.missing.map((one) => one.text).join("; ")}.`;
    return { jobId: job.id, optionId: choice?.optionId ?? null, file, ...found.value };
  });
}

/** Year by year, with a pause after each, so that pages stay quick. */
async function runAll(
  prepared: PreparedForecast,
  report: (done: number, total: number) => Promise<void>,
): Promise<OptionForecast> {
  const years: MemberYear[] = [];
  for (const year of forecastYears(prepared)) {
    years.push(year);
    await report(years.length, prepared.years);
    await breathe();
  }
  const [option] = gatherForecast(prepared, years).options;
  if (!option) throw new Error("A forecast has run and holds nothing.");
  return option;
}

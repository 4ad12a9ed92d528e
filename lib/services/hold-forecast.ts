import { setImmediate as breathe } from "node:timers/promises";
import { forecastsLived } from "@/lib/db/forecasts-lived";
import { logs } from "@/lib/db/logs";
import { stageRecords } from "@/lib/db/stage-records";
import { weatherFiles } from "@/lib/db/weather-files";
import { withTenant } from "@/lib/db/with-tenant";
import { workItems } from "@/lib/db/work-items";
import { type HoldInput, holdAgainstLog } from "@/lib/domain/forecast-lived/hold";
import { type ForecastLived, HOLD_VERSION } from "@/lib/domain/forecast-lived/kept";
import type { Job } from "@/lib/domain/jobs";
import type { TenantScope } from "@/lib/domain/scope";
import { notFound } from "@/lib/errors";
import { jobContext } from "./evaluate";
import { getJob } from "./jobs";
import { judgeJob } from "./judge-again";
import { designToHold, holdHash } from "./lived-forecast";
import { timelineOf } from "./log-summary";
import { readWeatherYear } from "./weather-year";

/** More often nobody looks, and each time is a write. */
const REPORT_EVERY_MS = 500;

/** Asks for the forecast to be held against a log in the background. What the records lack then, the work says. */
export function askToHold(
  scope: TenantScope,
  asked: { readonly jobId: string; readonly importId: string },
): Promise<void> {
  return withTenant(scope, async () => {
    const job = await getJob(scope, asked.jobId);
    const found = (await logs(scope).list(job.id)).find((one) => one.id === asked.importId);
    if (!found?.summary) throw notFound();
    await workItems(scope).add({
      task: "hold forecast against log",
      title: `Forecast against the log ${found.fileName}, job ${job.number}`.slice(0, 200),
      input: { jobId: job.id, importId: found.id },
      key: found.id,
    });
  });
}

/**
 * Holds the forecast of a job's records against one of its logs, fits the house to it, keeps both, and judges the job again.
 *
 * @returns What came of it, in words.
 */
export async function holdForecast(
  scope: TenantScope,
  jobId: string,
  importId: string,
  report: (done: number, total: number) => Promise<void>,
): Promise<string> {
  const job = await getJob(scope, jobId);
  const found = await prepared(scope, job, importId);
  if (!found.ready) return notYet(found.missing);
  const { file, inputs } = found;
  const timeline = await timelineOf(scope, job, found.log);
  if (timeline === null) throw notFound();
  const held = await run(
    {
      importId,
      samples: timeline.samples,
      elevationFt: found.elevationFt,
      house: { kind: "load summary", load: inputs.load, changed: inputs.changed.house },
      option: inputs.option,
      weather: await readWeatherYear(scope, file),
      weatherName: file.name,
      humidityLimitPct: inputs.humidityLimitPct,
    },
    report,
  );
  const { picture, ...summary } = held;
  await withTenant(scope, async () => {
    await stageRecords(scope).lock(job.id);
    await forecastsLived(scope).keep({
      jobId: job.id,
      importId,
      weatherFileId: file.id,
      inputsHash: holdHash(inputs, file.sha256, importId),
      engineVersion: HOLD_VERSION,
      summary,
      picture,
    });
  });
  await judgeJob(scope, job.id);
  const [lived, low, high] = [
    held.lived.hoursAboveLimit,
    held.forecast.hoursAboveLimit.low,
    held.forecast.hoursAboveLimit.high,
  ].map((hours) => Math.round(hours).toLocaleString("en-US"));
  return `${lived} h above the limit lived, ${low} to ${high} h forecast.`;
}

/** Step by step, with a pause after each, so that pages stay quick. */
async function run(
  input: HoldInput,
  report: (done: number, total: number) => Promise<void>,
): Promise<ForecastLived> {
  const steps = holdAgainstLog(input);
  let said = Number.NEGATIVE_INFINITY;
  for (let step = steps.next(); ; step = steps.next()) {
    if (step.done) return step.value;
    if (performance.now() - said > REPORT_EVERY_MS) {
      said = performance.now();
      await report(step.value.done, step.value.total);
    }
    await breathe();
  }
}

/** Everything it needs from the database, or what is missing in words. */
async function prepared(scope: TenantScope, job: Job, importId: string) {
  const log = (await logs(scope).list(job.id)).find((one) => one.id === importId);
  if (!log?.summary) throw notFound();
  const records = await stageRecords(scope).latest(job.id);
  const context = await jobContext(scope, job, records);
  const file = await weatherFiles(scope).find(job.weatherFileId);
  const design = designToHold(context);
  const { elevationFt } = context;
  const missing = [
    ...(file === null ? ["a weather file for the job"] : []),
    ...(elevationFt === null ? ["the home’s elevation"] : []),
    ...(design.ready ? [] : design.missing.map(({ text }) => text)),
  ];
  if (file === null || elevationFt === null || !design.ready) return { ready: false, missing } as const;
  return {
    ready: true,
    log,
    fileName: log.fileName,
    file,
    elevationFt,
    inputs: design.value.inputs,
  } as const;
}

function notYet(missing: readonly string[]): string {
  return `The forecast cannot be run yet. Still needed: ${missing.join("; ")}.`;
}

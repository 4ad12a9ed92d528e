import { setImmediate as breathe } from "node:timers/promises";
import { weatherFiles } from "@/lib/db/weather-files";
import { withTenant } from "@/lib/db/with-tenant";
import {
  FORECAST_SEED,
  type ForecastEvent,
  forecastEvents,
  jobSetup,
  missingOf,
  namedApart,
  optionSetup,
} from "@/lib/domain/forecast";
import { optionContext } from "@/lib/domain/options";
import type { TenantScope } from "@/lib/domain/scope";
import type { ForecastInput } from "@/lib/engineering/simulation";
import { AppError } from "@/lib/errors";
import type { ForecastOrderInput } from "@/lib/schemas/forecast";
import { getJob } from "./jobs";
import { optionsView } from "./options";
import { readWeatherYear } from "./weather-year";

/** A year takes a tenth of a second of the processor everybody shares. */
const MOST_AT_ONCE = 2;
let running = 0;

/**
 * Runs the forecast of a job's saved options and tells it as lines of JSON. The same loop as the browser's worker.
 *
 * @throws AppError `UNAVAILABLE` while others run.
 */
export async function forecastOnServer(
  scope: TenantScope,
  order: ForecastOrderInput,
  signal: AbortSignal,
): Promise<ReadableStream<Uint8Array>> {
  const input = await forecastInputOfOptions(scope, order);
  if (typeof input !== "string" && running >= MOST_AT_ONCE)
    throw new AppError("UNAVAILABLE", "The server is running other forecasts. Try again in a moment.");
  const encoder = new TextEncoder();
  return new ReadableStream({
    async start(controller) {
      const say = (event: ForecastEvent | { readonly kind: "done" }) =>
        controller.enqueue(encoder.encode(`${JSON.stringify(event)}\n`));
      if (typeof input === "string") {
        say({ kind: "failed", problem: input });
        return controller.close();
      }
      running += 1;
      try {
        for (const event of forecastEvents(input, { index: 0, of: 1 })) {
          if (signal.aborted) return;
          say(event);
          await breathe();
        }
        say({ kind: "done" });
        controller.close();
      } catch (error) {
        controller.error(error);
      } finally {
        running -= 1;
      }
    },
  });
}

/** The saved options of a job as the engine takes them, those that lack something left out; or what is still needed. */
export async function forecastInputOfOptions(
  scope: TenantScope,
  { jobId, changed, members }: ForecastOrderInput,
): Promise<ForecastInput | string> {
  const { view, file } = await withTenant(scope, async () => {
    const job = await getJob(scope, jobId);
    return {
      view: await optionsView(scope, jobId),
      file: await weatherFiles(scope).find(job.weatherFileId),
    };
  });
  const house = jobSetup(view.context, changed.house);
  const named = namedApart(view.options.map((one) => one.label));
  const setups = view.options.map(({ inputs }, place) => {
    const model = inputs.equipmentModelId === null ? null : (view.models[inputs.equipmentModelId] ?? null);
    return optionSetup(optionContext(view.context, inputs, model), named[place] ?? "", changed.system);
  });
  const options = setups.flatMap((one) => (one.ready ? [one.value.option] : []));
  if (!house.ready || file === null || options.length === 0) {
    const missing = missingOf([house, ...setups]).map((one) => one.text);
    const all = file === null ? ["the job's weather year", ...missing] : missing;
    return all.length === 0 ? "The job has no options yet." : `Still needed: ${all.join("; ")}.`;
  }
  return {
    ...house.value,
    weather: await readWeatherYear(scope, file),
    options,
    members,
    seed: FORECAST_SEED,
  };
}

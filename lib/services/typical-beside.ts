import { weatherFiles } from "@/lib/db/weather-files";
import type { Job } from "@/lib/domain/jobs";
import type { TenantScope } from "@/lib/domain/scope";
import { type TypicalOutdoors, typicalOutdoors } from "@/lib/domain/typical-outdoors";
import type { Timeline } from "./log-timeline";
import { readWeatherYear } from "./weather-year";

/** The job's weather year beside a log whose days nobody has outdoor readings of; `null` where there are some, or no year is chosen. */
export async function typicalBeside(
  scope: TenantScope,
  job: Pick<Job, "weatherFileId">,
  { samples, outdoorFrom }: Timeline,
): Promise<TypicalOutdoors | null> {
  if (outdoorFrom !== "typical year") return null;
  const file = await weatherFiles(scope).find(job.weatherFileId);
  return file && typicalOutdoors(samples.timeMs, file.name, await readWeatherYear(scope, file));
}

import { jobs } from "@/lib/db/jobs";
import { type WeatherFile, weatherFiles } from "@/lib/db/weather-files";
import { withTenant } from "@/lib/db/with-tenant";
import type { Job } from "@/lib/domain/jobs";
import { may } from "@/lib/domain/roles";
import type { TenantScope } from "@/lib/domain/scope";
import { byDistance, type DistantWeather } from "@/lib/domain/weather-distance";
import { isEngineeringError } from "@/lib/engineering/errors";
import { designConditions, parseEpw } from "@/lib/engineering/weather";
import { AppError, invalidInput } from "@/lib/errors";
import { sha256Of, storeFile } from "@/lib/files/store";
import type { ChooseWeatherInput } from "@/lib/schemas/weather";
import { getJob } from "./jobs";
import { judgeJob } from "./judge-again";

export type AddWeatherFileInput = {
  readonly name: string;
  readonly sourceNote: string;
  /** The EPW file as it came. */
  readonly bytes: Uint8Array;
};

/**
 * Keeps a weather year with the design values that follow from its own hours, and answers its id.
 *
 * @throws AppError `TOO_LARGE` or `UNSUPPORTED_FILE`, naming the row that cannot be read.
 */
export async function addWeatherFile(scope: TenantScope, input: AddWeatherFileInput): Promise<string> {
  const same = await weatherFiles(scope).findSame(sha256Of(input.bytes));
  if (same !== null) {
    const message = `This very file is here as “${same}”. Choose it from the list.`;
    throw invalidInput([{ field: "file", message }]);
  }
  const { weather, design } = readWeather(input.bytes);
  const stored = await storeFile(scope.tenantId, input.bytes, "weather", "file");
  const { place } = weather;
  return weatherFiles(scope).add({
    name: input.name,
    sourceNote: input.sourceNote,
    latitude: place.latitudeDeg,
    longitude: place.longitudeDeg,
    elevationFt: place.elevationFt,
    utcOffsetHours: place.timeZoneH,
    hours: weather.hourCount,
    sha256: stored.sha256,
    sizeBytes: stored.size,
    design: {
      name: input.name,
      coolingDbF: design.cooling.dryBulbF,
      coolingWbF: design.cooling.coincidentWetBulbF,
      wetDewPointF: design.dehumidification.dewPointF,
      wetDbF: design.dehumidification.coincidentDryBulbF,
      heatingDbF: design.heating.dryBulbF,
    },
  });
}

function readWeather(bytes: Uint8Array) {
  try {
    // The format is ASCII in practice; a stray byte in a place name must not refuse a whole year.
    const weather = parseEpw(new TextDecoder("utf-8").decode(bytes));
    return { weather, design: designConditions(weather) };
  } catch (error) {
    if (!isEngineeringError(error)) throw error;
    const fields = [{ field: "file", message: error.message }];
    throw new AppError("UNSUPPORTED_FILE", error.message, { fields, cause: error });
  }
}

/** The weather years a job can be held against. */
export function listWeather(scope: TenantScope): Promise<readonly WeatherFile[]> {
  return weatherFiles(scope).list();
}

export type WeatherChoiceView = {
  readonly job: Job;
  readonly files: readonly (DistantWeather<WeatherFile> & { readonly jobs: number })[];
  readonly mayEdit: boolean;
};

/** The company's weather years, the nearest to the job's home first. */
export async function weatherChoiceView(scope: TenantScope, jobId: string): Promise<WeatherChoiceView> {
  const job = await getJob(scope, jobId);
  const files = await weatherFiles(scope).list();
  const counts = await weatherFiles(scope).jobCounts();
  const { latitude, longitude, elevationFt } = job.home;
  const place = latitude === null || longitude === null ? null : { latitude, longitude };
  return {
    job,
    files: byDistance(files, { place, elevationFt }).map((one) => ({
      ...one,
      jobs: counts.get(one.file.id) ?? 0,
    })),
    mayEdit: may(scope.role, "design.edit"),
  };
}

/** Says where a job's home is and which weather year it is held against, and judges the job by it. */
export function chooseWeather(scope: TenantScope, { jobId, ...chosen }: ChooseWeatherInput): Promise<void> {
  return withTenant(scope, async () => {
    const job = await getJob(scope, jobId);
    await jobs(scope).setWeather(job, chosen);
    await judgeJob(scope, job.id);
  });
}

/** Takes a weather year off the list. One that a job is held against has to stay: its findings rest on it. */
export function retireWeather(scope: TenantScope, weatherFileId: string): Promise<void> {
  return withTenant(scope, async () => {
    const used = (await weatherFiles(scope).jobCounts()).get(weatherFileId) ?? 0;
    if (used > 0) {
      const held = used === 1 ? "1 job is" : `${used} jobs are`;
      throw new AppError("CONFLICT", `${held} held against this weather year. Choose another there first.`);
    }
    await weatherFiles(scope).retire(weatherFileId);
  });
}

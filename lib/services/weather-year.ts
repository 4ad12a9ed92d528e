import { type WeatherFile, weatherFiles } from "@/lib/db/weather-files";
import { packWeather } from "@/lib/domain/forecast";
import type { TenantScope } from "@/lib/domain/scope";
import { parseEpw, type Weather } from "@/lib/engineering/weather";
import { notFound } from "@/lib/errors";
import { readStoredFile } from "@/lib/files/store";
import { getJob } from "./jobs";

/** Reading a year takes as long as running one; a company has few. */
const KEPT = 4;
const years = new Map<string, Weather>();

/** The hours of a weather file. */
export async function readWeatherYear(scope: TenantScope, file: WeatherFile): Promise<Weather> {
  const known = years.get(file.sha256);
  if (known !== undefined) return known;
  const bytes = await readStoredFile(scope.tenantId, file.sha256);
  const weather = parseEpw(new TextDecoder("utf-8").decode(bytes));
  const oldest = years.size >= KEPT ? years.keys().next().value : undefined;
  if (oldest !== undefined) years.delete(oldest);
  years.set(file.sha256, weather);
  return weather;
}

/** The hours of a job's weather year as bytes, for the hash the asker knows; another one is not there any more. */
export async function packedWeather(
  scope: TenantScope,
  jobId: string,
  sha256: string,
): Promise<Uint8Array<ArrayBuffer>> {
  const { weatherFileId } = await getJob(scope, jobId);
  const file = await weatherFiles(scope).find(weatherFileId);
  if (file?.sha256 !== sha256) throw notFound();
  return packWeather(await readWeatherYear(scope, file));
}

/** Which year a job has: its name, and the hash its hours are read by. */
export type WeatherInShort = { readonly name: string; readonly sha256: string };

export async function weatherInShort(scope: TenantScope, id: string | null): Promise<WeatherInShort | null> {
  const file = await weatherFiles(scope).find(id);
  return file && { name: file.name, sha256: file.sha256 };
}

import type { WeatherFile } from "@/lib/db/weather-files";
import type { TenantScope } from "@/lib/domain/scope";
import { parseEpw, type Weather } from "@/lib/engineering/weather";
import { readStoredFile } from "@/lib/files/store";

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

import { type WeatherFile, weatherFiles } from "@/lib/db/weather-files";
import type { TenantScope } from "@/lib/domain/scope";

/** The weather years a job can be held against. */
export function listWeather(scope: TenantScope): Promise<readonly WeatherFile[]> {
  return weatherFiles(scope).list();
}

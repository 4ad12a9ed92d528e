import { type WeatherFile, weatherFiles } from "@/lib/db/weather-files";
import type { TenantScope } from "@/lib/domain/scope";
import { isEngineeringError } from "@/lib/engineering/errors";
import { designConditions, parseEpw } from "@/lib/engineering/weather";
import { AppError } from "@/lib/errors";
import { storeFile } from "@/lib/files/store";

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

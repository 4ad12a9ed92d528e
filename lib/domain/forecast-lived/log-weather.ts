import type { LogSamples } from "@/lib/engineering/logs";
import { logAir } from "@/lib/engineering/logs/log-air";
import type { Weather } from "@/lib/engineering/weather";

/*
 * The weather a log was written in: the log's own outdoor temperature and humidity put into the weather file's year at their dates, wind
 * and light as they usually are at that hour of that season with such air, because no log has them.
 */

const HOUR_MS = 3_600_000;
/** Wind and light are told from the file's hours within so many days and hours. Common practice, no source. */
const DAYS_EITHER_WAY = 15;
const HOURS_EITHER_WAY = 1;
/** A gap in the log's outdoors up to this long is bridged by a straight line, h. */
const LONGEST_BRIDGE_H = 3;

export type LogWeather = {
  readonly weather: Weather;
  /** Hour of the year in which the log begins, 0 first, and the instant at which that hour begins. */
  readonly firstHour: number;
  readonly firstMs: number;
  readonly hours: number;
  /** 1 where the hour's outdoors are the log's own; elsewhere they are the file's. */
  readonly own: Uint8Array;
};

/**
 * The weather file's year with the log's hours in it; `null` for a log without outdoor temperature and humidity. A log longer than a year
 * counts with its last year.
 */
export function logWeather(samples: LogSamples, weather: Weather, elevationFt: number): LogWeather | null {
  const hourly = hourlyOutdoors(samples, weather, elevationFt);
  if (hourly === null) return null;
  const { firstMs, hours, dryBulbF, humidityRatio } = hourly;
  const count = weather.hourCount;
  const firstHour = hourOfYear(firstMs, weather);
  const own = new Uint8Array(hours);
  const changed = {
    dryBulbF: Float64Array.from(weather.dryBulbF),
    humidityRatio: Float64Array.from(weather.humidityRatio),
    windMph: Float64Array.from(weather.windMph),
    globalHorizontalBtuhPerFt2: Float64Array.from(weather.globalHorizontalBtuhPerFt2),
    directNormalBtuhPerFt2: Float64Array.from(weather.directNormalBtuhPerFt2),
    diffuseHorizontalBtuhPerFt2: Float64Array.from(weather.diffuseHorizontalBtuhPerFt2),
  };
  // Leakage by wind follows its square.
  const windSquared = weather.windMph.map((wind) => wind * wind);
  const light = [
    "globalHorizontalBtuhPerFt2",
    "directNormalBtuhPerFt2",
    "diffuseHorizontalBtuhPerFt2",
  ] as const;
  for (let hour = 0; hour < hours; hour++) {
    const place = (firstHour + hour) % count;
    const [outF, ratio] = [dryBulbF[hour] ?? Number.NaN, humidityRatio[hour] ?? Number.NaN];
    if (Number.isNaN(outF) || Number.isNaN(ratio)) continue;
    const usual = usualWith(weather, place, outF, ratio);
    for (const channel of light) changed[channel][place] = usual(weather[channel]);
    changed.windMph[place] = Math.sqrt(usual(windSquared));
    changed.dryBulbF[place] = outF;
    changed.humidityRatio[place] = ratio;
    own[hour] = 1;
  }
  // Dew point and relative humidity are not read by the year; kept, they would contradict.
  const unread = () => new Float64Array(count).fill(Number.NaN);
  return {
    weather: { ...weather, ...changed, dewPointF: unread(), relativeHumidityPct: unread() },
    firstHour,
    firstMs,
    hours,
    own,
  };
}

/** The hours a log covers, in the weather's year. A log longer than a year counts with its last year. */
export function logSpan(samples: LogSamples, weather: Weather) {
  const { timeMs, intervalMin } = samples;
  const lastMs = (timeMs.at(-1) ?? 0) + intervalMin * 60_000;
  const sinceMs = Math.max(timeMs[0] ?? 0, lastMs - weather.hourCount * HOUR_MS);
  // Whole hours of the standard clock; zones of half hours have theirs.
  const shiftMs = ((weather.place.timeZoneH % 1) + 1) * HOUR_MS;
  const firstMs = Math.floor((sinceMs + shiftMs) / HOUR_MS) * HOUR_MS - shiftMs;
  const hours = Math.min(weather.hourCount, Math.max(1, Math.round((lastMs - firstMs) / HOUR_MS)));
  return { firstMs, hours, firstHour: hourOfYear(firstMs, weather) };
}

/** Hour of the weather's year, by its own standard clock. 29 February counts as 28. */
export function hourOfYear(atMs: number, { place, hourCount }: Weather): number {
  const local = new Date(atMs + place.timeZoneH * HOUR_MS);
  const month = local.getUTCMonth();
  const leap = hourCount === 8_784;
  const day = !leap && month === 1 ? Math.min(28, local.getUTCDate()) : local.getUTCDate();
  const year = leap ? 2024 : 2023;
  return (Date.UTC(year, month, day, local.getUTCHours()) - Date.UTC(year, 0, 1)) / HOUR_MS;
}

/**
 * What a channel usually is around an hour when the air is so warm and so moist: a plane through the file's hours around it, kept between
 * their least and most. Moist air comes with other winds than dry air, and clear days are warmer; without that a house looks leakier.
 */
function usualWith(
  { dryBulbF, humidityRatio, hourCount }: Weather,
  place: number,
  outF: number,
  ratio: number,
) {
  const places: number[] = [];
  for (let day = -DAYS_EITHER_WAY; day <= DAYS_EITHER_WAY; day++)
    for (let hour = -HOURS_EITHER_WAY; hour <= HOURS_EITHER_WAY; hour++)
      places.push((place + 24 * day + hour + hourCount) % hourCount);
  const mean = (values: Float64Array) =>
    places.reduce((sum, one) => sum + (values[one] ?? 0), 0) / places.length;
  const [meanF, meanRatio] = [mean(dryBulbF), mean(humidityRatio)];
  const f = (one: number) => (dryBulbF[one] ?? 0) - meanF;
  // In units of about a degree, so that the two weigh alike.
  const w = (one: number) => 7_000 * ((humidityRatio[one] ?? 0) - meanRatio);
  const dot = (a: (one: number) => number, b: (one: number) => number) =>
    places.reduce((sum, one) => sum + a(one) * b(one), 0);
  // A little is added to the diagonal: air that hardly varies tells nothing.
  const [ff, fw, ww] = [dot(f, f) + places.length, dot(f, w), dot(w, w) + places.length];
  const determinant = ff * ww - fw * fw;
  return (values: Float64Array): number => {
    const level = mean(values);
    const v = (one: number) => (values[one] ?? 0) - level;
    const [fv, wv] = [dot(f, v), dot(w, v)];
    const perF = (fv * ww - wv * fw) / determinant;
    const perGrain = (wv * ff - fv * fw) / determinant;
    const told = level + perF * (outF - meanF) + perGrain * 7_000 * (ratio - meanRatio);
    const around = places.map((one) => values[one] ?? 0);
    return Math.min(Math.max(...around), Math.max(Math.min(...around), told));
  };
}

/** The log's outdoors as each hour ends, as weather files have them. NaN in gaps. */
function hourlyOutdoors(samples: LogSamples, weather: Weather, elevationFt: number) {
  const { timeMs, intervalMin, channels } = samples;
  const { outdoorF, outdoorRhPct, outdoorDewPointF } = channels;
  if (outdoorF === undefined || (outdoorRhPct ?? outdoorDewPointF) === undefined) return null;
  const { firstMs, hours } = logSpan(samples, weather);
  const air = logAir(elevationFt);
  const sums = { f: new Float64Array(hours), ratio: new Float64Array(hours), count: new Float64Array(hours) };
  for (let index = 0; index < timeMs.length; index++) {
    const at = (column: Float64Array | undefined): number => column?.[index] ?? Number.NaN;
    const [outF, rh, dewF] = [at(outdoorF), at(outdoorRhPct), at(outdoorDewPointF)];
    const vapour = Number.isNaN(rh) ? air.vapourPsia(dewF, 100) : air.vapourPsia(outF, rh);
    // What lies within half an hour of the hour's end stands for it.
    const hour = Math.round(((timeMs[index] ?? 0) + intervalMin * 30_000 - firstMs) / HOUR_MS) - 1;
    if (hour < 0 || hour >= hours || Number.isNaN(vapour) || Number.isNaN(outF)) continue;
    sums.f[hour] = (sums.f[hour] ?? 0) + outF;
    sums.ratio[hour] = (sums.ratio[hour] ?? 0) + air.humidityRatio(vapour);
    sums.count[hour] = (sums.count[hour] ?? 0) + 1;
  }
  const mean = (column: Float64Array) =>
    bridged(column.map((sum, hour) => (sums.count[hour] ? sum / (sums.count[hour] ?? 1) : Number.NaN)));
  return { firstMs, hours, dryBulbF: mean(sums.f), humidityRatio: mean(sums.ratio) };
}

function bridged(values: Float64Array): Float64Array {
  const found = Float64Array.from(values);
  let last = -1;
  for (let hour = 0; hour < found.length; hour++) {
    const value = values[hour] ?? Number.NaN;
    if (Number.isNaN(value)) continue;
    const missing = hour - last - 1;
    if (last >= 0 && missing > 0 && missing <= LONGEST_BRIDGE_H) {
      const from = values[last] ?? value;
      for (let step = 1; step <= missing; step++)
        found[last + step] = from + ((value - from) * step) / (missing + 1);
    }
    last = hour;
  }
  return found;
}

import { points } from "./least-squares";
import { type LogSeries, moistureAllowed } from "./log-series";

/** Signs of where the moisture comes from. */
export type MoistureSources = {
  /** Wet hours in mild weather (outdoor 55 to 75 °F) with less than a tenth of cooling. */
  readonly mildIdleWetHours: number;
  /** The same over all wet hours, 0 to 1; null without wet hours. */
  readonly mildIdleShareOfWet: number | null;
  /** Wet hours between 22:00 and 6:00 over all wet hours, 0 to 1; null without wet hours. */
  readonly nightShareOfWet: number | null;
  /**
   * Wet hours in which the air outdoors held less moisture than the house may at its limit, over the wet hours, 0 to 1: then what makes
   * it wet is inside. Null without outdoor humidity or wet hours.
   */
  readonly dryOutdoorsShareOfWet: number | null;
  /**
   * Share of the distance to outdoor moisture that indoor moisture closes in an hour with nothing running: leakage, ventilation, doors,
   * less what the house stores. Null with fewer than 48 such hours or a distance that does not vary.
   */
  readonly exchangePerH: number | null;
  /**
   * By how many gr/lb indoor moisture follows one gr/lb outdoors in hours without cooling, and how tightly (r).
   * Null with fewer than 48 such hours or an outdoor moisture that does not move.
   */
  readonly followsOutdoors: { readonly slope: number; readonly r: number; readonly hours: number } | null;
};

const LEAST_HOURS = 48;
/** Outdoor moisture has to vary by this much for a slope to mean anything, lb/lb (about 7 gr/lb). */
const LEAST_SPREAD = 0.001;

/**
 * Null without indoor humidity or outdoor temperature.
 *
 * @param limitPct - Humidity limit of the job, % RH, 30 to 70.
 */
export function moistureSources(series: LogSeries, limitPct: number): MoistureSources | null {
  const rh = series.channel("indoorRhPct");
  const outdoorF = series.channel("outdoorF");
  if (rh === null || outdoorF === null) return null;
  let wet = 0;
  let mildIdle = 0;
  let night = 0;
  let [compared, dryOutdoors] = [0, 0];
  for (let index = 0; index < series.length; index++) {
    if (!((rh[index] ?? Number.NaN) > limitPct)) continue;
    wet++;
    const hour = series.localHour[index] ?? 0;
    if (hour >= 22 || hour < 6) night++;
    const allowed = moistureAllowed(series, rh, index, limitPct);
    const outside = series.outdoorHumidityRatio?.[index] ?? Number.NaN;
    if (!Number.isNaN(allowed) && !Number.isNaN(outside)) compared++;
    if (outside < allowed) dryOutdoors++;
    const out = outdoorF[index] ?? Number.NaN;
    if (out >= 55 && out <= 75 && isIdle(series, index)) mildIdle++;
  }
  return {
    mildIdleWetHours: mildIdle * series.hoursEach,
    mildIdleShareOfWet: wet === 0 ? null : mildIdle / wet,
    nightShareOfWet: wet === 0 ? null : night / wet,
    dryOutdoorsShareOfWet: compared === 0 ? null : dryOutdoors / compared,
    exchangePerH: exchangePerH(series),
    followsOutdoors: followsOutdoors(series),
  };
}

/** Without a stage column nothing is known to run, so nothing counts as idle. */
function isIdle(series: LogSeries, index: number): boolean {
  return (series.coolingShare?.[index] ?? Number.NaN) < 0.1;
}

function followsOutdoors(series: LogSeries): MoistureSources["followsOutdoors"] {
  const { indoorHumidityRatio: indoor, outdoorHumidityRatio: outdoor } = series;
  if (indoor === null || outdoor === null) return null;
  const idle = points();
  for (let index = 0; index < series.length; index++) {
    const a = outdoor[index] ?? Number.NaN;
    const b = indoor[index] ?? Number.NaN;
    if (Number.isNaN(a) || Number.isNaN(b) || !isIdle(series, index)) continue;
    idle.add(a, b);
  }
  const hours = idle.count() * series.hoursEach;
  if (hours < LEAST_HOURS) return null;
  const { slope, r, spread } = idle.line();
  return spread >= LEAST_SPREAD && Number.isFinite(r) ? { slope, r, hours } : null;
}

/** Slope of the indoor change over an hour against the distance to outdoors at its beginning. */
function exchangePerH(series: LogSeries): number | null {
  const { indoorHumidityRatio: indoor, outdoorHumidityRatio: outdoor } = series;
  if (indoor === null || outdoor === null) return null;
  const steps = Math.max(1, Math.round(1 / series.hoursEach));
  const moved = points();
  let quiet = 0;
  for (let index = 0; index < series.length; index++) {
    quiet = series.afterGap[index] === 0 && isIdle(series, index) ? quiet + 1 : 0;
    if (quiet <= steps) continue;
    const from = index - steps;
    const distance = (outdoor[from] ?? Number.NaN) - (indoor[from] ?? Number.NaN);
    const change = (indoor[index] ?? Number.NaN) - (indoor[from] ?? Number.NaN);
    if (!Number.isNaN(distance) && !Number.isNaN(change)) moved.add(distance, change);
  }
  if (moved.count() * series.hoursEach < LEAST_HOURS) return null;
  const { slope, spread } = moved.line();
  return spread >= LEAST_SPREAD && Number.isFinite(slope) ? slope / (steps * series.hoursEach) : null;
}

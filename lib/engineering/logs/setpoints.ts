import { quantile } from "simple-statistics";
import type { LogSeries } from "./log-series";

/** How the people in the house set the thermostat. */
export type SetpointAnalysis = {
  readonly medianF: number;
  readonly lowestF: number;
  readonly highestF: number;
  /** Median while it is 60 °F or more outdoors: a setpoint of winter keeps no room cool. Null without such a reading. */
  readonly warmMedianF: number | null;
  /** Changes of at least 1 °F, a day. */
  readonly changesPerDay: number;
  /** Drops of 3 °F or more, which call for a long recovery, a day. */
  readonly bigDropsPerDay: number;
};

const CHANGE_F = 1;
const BIG_DROP_F = 3;
const WARM_F = 60;

/** Null without a setpoint column or a reading in it. */
export function setpointAnalysis(series: LogSeries): SetpointAnalysis | null {
  const setpoint = series.channel("setpointF");
  if (setpoint === null) return null;
  const read: number[] = [];
  const warm: number[] = [];
  const outdoorF = series.channel("outdoorF");
  let changes = 0;
  let drops = 0;
  for (let index = 0; index < series.length; index++) {
    const now = setpoint[index] ?? Number.NaN;
    if (Number.isNaN(now)) continue;
    const change = series.afterGap[index] === 1 ? Number.NaN : now - (setpoint[index - 1] ?? Number.NaN);
    if (Math.abs(change) >= CHANGE_F) changes++;
    if (change <= -BIG_DROP_F) drops++;
    read.push(now);
    if (outdoorF === null || (outdoorF[index] ?? Number.NaN) >= WARM_F) warm.push(now);
  }
  if (read.length === 0) return null;
  const days = (read.length * series.hoursEach) / 24;
  return {
    medianF: quantile(read, 0.5),
    warmMedianF: warm.length === 0 ? null : quantile(warm, 0.5),
    lowestF: quantile(read, 0),
    highestF: quantile(read, 1),
    changesPerDay: changes / days,
    bigDropsPerDay: drops / days,
  };
}

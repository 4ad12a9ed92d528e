import { DateTime, IANAZone } from "luxon";
import type { DayChannel, LogDay } from "@/lib/db/log-day";
import type { LogChannel, LogSamples } from "@/lib/engineering/logs";
import { findZone, usualIntervalMin } from "@/lib/schemas/log-file";

const CHANNEL_OF: Readonly<Record<LogChannel, DayChannel>> = {
  indoorF: "indoorDbF",
  indoorRhPct: "indoorRhPct",
  secondIndoorF: "secondIndoorDbF",
  secondIndoorRhPct: "secondIndoorRhPct",
  outdoorF: "outdoorDbF",
  outdoorRhPct: "outdoorRhPct",
  outdoorDewPointF: "outdoorDewPointF",
  setpointF: "setpointF",
  firstStageShare: "firstStageFraction",
  secondStageShare: "secondStageFraction",
  auxiliaryShare: "auxiliaryFraction",
  fanShare: "fanFraction",
};

/** Cuts samples at the house's midnights. */
export function daysOfSamples(samples: LogSamples, timeZone: string): readonly LogDay[] {
  const { timeMs, utcOffsetMin } = samples;
  const days: LogDay[] = [];
  let from = 0;
  const dayAt = (index: number) =>
    Math.floor(((timeMs[index] ?? 0) + (utcOffsetMin[index] ?? 0) * 60_000) / 86_400_000);
  for (let index = 1; index <= timeMs.length; index++) {
    if (index < timeMs.length && dayAt(index) === dayAt(from)) continue;
    days.push(dayFrom(samples, from, index, timeZone));
    from = index;
  }
  return days;
}

function dayFrom(samples: LogSamples, from: number, to: number, timeZone: string): LogDay {
  const startsAt = DateTime.fromMillis(samples.timeMs[from] ?? 0, { zone: timeZone }).startOf("day");
  const startMs = startsAt.toMillis();
  const channels = Object.entries(CHANNEL_OF).flatMap(([channel, name]) => {
    const values = samples.channels[channel as LogChannel];
    return values === undefined ? [] : [[name, values.slice(from, to)]];
  });
  return {
    day: startsAt.toISODate() ?? "",
    startsAt: startsAt.toJSDate(),
    offsetMinutes: samples.timeMs.slice(from, to).map((time) => (time - startMs) / 60_000),
    channels: Object.fromEntries(channels),
  };
}

/** Kept days as one log again; null without any. A channel some days lack is a gap in them. */
export function samplesOfDays(days: readonly LogDay[], timeZone: string): LogSamples | null {
  const length = days.reduce((sum, { offsetMinutes }) => sum + offsetMinutes.length, 0);
  if (length === 0) return null;
  const timeMs = new Float64Array(length);
  const utcOffsetMin = new Int16Array(length);
  const zone = findZone(timeZone) ?? IANAZone.create("UTC");
  const channels: { [K in LogChannel]?: Float64Array } = {};
  let at = 0;
  for (const { startsAt, offsetMinutes, channels: kept } of days) {
    const startMs = startsAt.getTime();
    const [first, last] = [zone.offset(startMs), zone.offset(startMs + 25 * 3_600_000)];
    for (let index = 0; index < offsetMinutes.length; index++) {
      const time = startMs + (offsetMinutes[index] ?? 0) * 60_000;
      timeMs[at + index] = time;
      // Only a day beside a clock change has two offsets.
      utcOffsetMin[at + index] = first === last ? first : zone.offset(time);
    }
    for (const [channel, name] of Object.entries(CHANNEL_OF)) {
      const values = kept[name];
      if (values === undefined) continue;
      let whole = channels[channel as LogChannel];
      if (whole === undefined) {
        whole = new Float64Array(length).fill(Number.NaN);
        channels[channel as LogChannel] = whole;
      }
      whole.set(values, at);
    }
    at += offsetMinutes.length;
  }
  return { timeMs, utcOffsetMin, intervalMin: usualIntervalMin(timeMs) ?? 60, channels };
}

/** The samples from an instant on; null without any. */
export function samplesSince(samples: LogSamples, fromMs: number): LogSamples | null {
  const { timeMs, utcOffsetMin, intervalMin, channels } = samples;
  const from = timeMs.findIndex((time) => time >= fromMs);
  if (from === -1) return null;
  return {
    timeMs: timeMs.slice(from),
    utcOffsetMin: utcOffsetMin.slice(from),
    intervalMin,
    channels: Object.fromEntries(
      Object.entries(channels).map(([name, values]) => [name, values.slice(from)]),
    ),
  };
}

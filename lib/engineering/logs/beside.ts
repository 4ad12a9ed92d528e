import { type LogChannel, type LogSamples, requireLogSamples } from "./samples";

/** Channels a log may take from another source, each with the channel it comes from. */
type Taken = { readonly [K in LogChannel]?: LogChannel };

/**
 * Fills channels of a log from another source beside it, a second sensor or a weather station, by straight lines between that
 * source's readings. Where two of its readings lie more than `mostApartMin` apart nothing is made up: it stays a gap.
 *
 * @param log - The log to complete. Channels it has stay as they are.
 * @param other - The other source, in the same instants' time.
 * @param take - Which of its channels becomes which.
 * @param mostApartMin - Longest distance of two readings to draw a line over, min, more than 0.
 * @returns The log with the channels added; unchanged when nothing overlaps.
 * @throws {@link ImpossibleStateError} for samples whose times do not rise.
 * @see Linear interpolation (computed).
 */
export function besideLog(log: LogSamples, other: LogSamples, take: Taken, mostApartMin: number): LogSamples {
  requireLogSamples(log);
  requireLogSamples(other);
  const added = Object.entries(take).flatMap(([to, from]) => {
    const values = other.channels[from];
    if (values === undefined || log.channels[to as LogChannel] !== undefined) return [];
    const filled = onTimes(log.timeMs, other.timeMs, values, mostApartMin * 60_000);
    return filled.some((value) => !Number.isNaN(value)) ? [[to, filled] as const] : [];
  });
  return { ...log, channels: { ...log.channels, ...Object.fromEntries(added) } };
}

function onTimes(
  wanted: Float64Array,
  at: Float64Array,
  values: Float64Array,
  mostApartMs: number,
): Float64Array {
  const filled = new Float64Array(wanted.length).fill(Number.NaN);
  let next = 0;
  for (let index = 0; index < wanted.length; index++) {
    const now = wanted[index] ?? 0;
    while (next < at.length && (at[next] ?? 0) < now) next++;
    const after = at[next] ?? Number.NaN;
    if (after === now) filled[index] = values[next] ?? Number.NaN;
    const before = at[next - 1] ?? Number.NaN;
    if (!(after > now && after - before <= mostApartMs)) continue;
    const [low, high] = [values[next - 1] ?? Number.NaN, values[next] ?? Number.NaN];
    filled[index] = low + ((high - low) * (now - before)) / (after - before);
  }
  return filled;
}

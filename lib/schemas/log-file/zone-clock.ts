import { DateTime, type Zone } from "luxon";

/** Local clock readings that fall into a clock change. */
export type ClockChange = {
  readonly kind: "repeated hour" | "skipped hour";
  readonly fromLine: number;
  readonly toLine: number;
  readonly rows: number;
  /** What was assumed, in one sentence. */
  readonly assumed: string;
};

/** An instant and how far the house's clock was ahead of UTC, min. */
export type Instant = {
  readonly timeMs: number;
  readonly offsetMin: number;
  readonly change: ClockChange["kind"] | null;
};

const DAY_MS = 86_400_000;

/** The zone of a name such as "America/Chicago" or "UTC-6", or null when there is none. */
export function findZone(name: string): Zone | null {
  const { zone } = DateTime.fromMillis(0, { zone: name });
  return zone.isValid ? zone : null;
}

/**
 * Turns readings of a house's clock into instants. Asks the zone once a day instead of once a row.
 * In the hour that comes twice the first pass is taken until time would run back, then the second: so rows have to come
 * in the order they were written. An hour that never was keeps the offset from before the change; when the rows after
 * it would then run back, the log's clock did not change at all, and that offset holds to the end of the file.
 */
export function zoneClock(zone: Zone): (clock: number) => Instant {
  /** Offset of a whole day, or null on and beside a day with a change. */
  const steady = new Map<number, number | null>();
  const atMidnight = midnightOffsets(zone);
  let last = Number.NEGATIVE_INFINITY;
  /** Offset before a skipped hour that the log has rows in. */
  let beforeSkip: number | null = null;
  let unchanging = false;

  function midnightOffset(day: number): number {
    const offset = atMidnight.get(day) ?? zone.offset(day * DAY_MS);
    atMidnight.set(day, offset);
    return offset;
  }

  function steadyOffset(day: number): number | null {
    const known = steady.get(day);
    if (known !== undefined) return known;
    const offsets = [-1, 0, 1, 2].map((days) => midnightOffset(day + days));
    const found = offsets.every((offset) => offset === offsets[0]) ? (offsets[0] ?? 0) : null;
    steady.set(day, found);
    return found;
  }

  function read(clock: number): Instant {
    const day = Math.floor(clock / DAY_MS);
    const offset = steadyOffset(day);
    if (unchanging && beforeSkip !== null) {
      const timeMs = clock - beforeSkip * 60_000;
      return { timeMs, offsetMin: offset ?? offsetAt(zone, timeMs), change: null };
    }
    return offset === null
      ? nearChange(zone, clock, last)
      : { timeMs: clock - offset * 60_000, offsetMin: offset, change: null };
  }

  return (clock) => {
    let instant = read(clock);
    if (instant.change === "skipped hour") beforeSkip = instant.offsetMin;
    else if (beforeSkip !== null && !unchanging) {
      unchanging = instant.timeMs <= last;
      if (unchanging) instant = read(clock);
      else beforeSkip = null;
    }
    last = instant.timeMs;
    return instant;
  };
}

/** Offsets at midnights asked for so far, by zone: asking is slow, and what a zone says of a day never changes. */
const askedBefore = new WeakMap<Zone, Map<number, number>>();

function midnightOffsets(zone: Zone): Map<number, number> {
  const known = askedBefore.get(zone) ?? new Map<number, number>();
  askedBefore.set(zone, known);
  return known;
}

/** A zone's offset by UTC day: one, or two with the instant of the change between them. */
type DayOffsets = { readonly before: number; readonly after: number; readonly changeMs: number };
const daysAskedBefore = new WeakMap<Zone, Map<number, DayOffsets>>();

/** The same as `zone.offset`, which takes thousands of times as long and is asked for every row beside a clock change. */
function offsetAt(zone: Zone, ms: number): number {
  const days = daysAskedBefore.get(zone) ?? new Map<number, DayOffsets>();
  daysAskedBefore.set(zone, days);
  const day = Math.floor(ms / DAY_MS);
  const known = days.get(day) ?? dayOffsets(zone, day);
  days.set(day, known);
  return ms < known.changeMs ? known.before : known.after;
}

function dayOffsets(zone: Zone, day: number): DayOffsets {
  let [from, to] = [day * DAY_MS, (day + 1) * DAY_MS];
  const [before, after] = [zone.offset(from), zone.offset(to)];
  if (before === after) return { before, after, changeMs: to };
  while (to - from > 1) {
    const middle = Math.floor((from + to) / 2);
    if (zone.offset(middle) === before) from = middle;
    else to = middle;
  }
  return { before, after, changeMs: to };
}

function nearChange(zone: Zone, clock: number, last: number): Instant {
  const before = offsetAt(zone, clock - DAY_MS);
  const after = offsetAt(zone, clock + DAY_MS);
  const [early, late] = [before, after].map((offset) => ({
    timeMs: clock - offset * 60_000,
    offsetMin: offset,
  }));
  if (early === undefined || late === undefined) throw new RangeError("two offsets are two instants");
  const earlyFits = offsetAt(zone, early.timeMs) === before;
  const lateFits = offsetAt(zone, late.timeMs) === after;
  if (before !== after && earlyFits && lateFits) {
    return { ...(early.timeMs > last ? early : late), change: "repeated hour" };
  }
  if (!earlyFits && !lateFits) return { ...early, change: "skipped hour" };
  return { ...(earlyFits ? early : late), change: null };
}

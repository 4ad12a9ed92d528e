import type { DateOrder } from "./mapping";

/** A date as it stands in a cell: its three numbers in the order written, and the time of day. */
export type DateCell = {
  readonly numbers: readonly [number, number, number];
  readonly yearFirst: boolean;
  readonly hour: number;
  readonly minute: number;
  readonly second: number;
  /** Minutes ahead of UTC when the cell itself says so; null for local time. */
  readonly offsetMin: number | null;
};

const TIME = String.raw`(\d{1,2}):(\d{2})(?::(\d{2})(?:[.,]\d+)?)?(?:\s*([ap])\.?m\.?)?\s*(z|utc|gmt|[+-]\d{2}:?\d{2})?`;
const DATE_AND_TIME = new RegExp(
  String.raw`^(\d{1,4})[-/.](\d{1,2})[-/.](\d{1,4})(?:(?:\s*t\s*|[\s,]+)${TIME})?$`,
  "i",
);
const TIME_OF_DAY = new RegExp(`^${TIME}$`, "i");
const EPOCH = /^\d{10}$|^\d{13}$/;

/** The date in a cell, or null when there is none that can be read. Two-digit years are not guessed at. */
export function readDateCell(cell: string): DateCell | null {
  const words = cell.trim();
  const found = DATE_AND_TIME.exec(words);
  if (found === null) return EPOCH.test(words) ? fromEpoch(words) : null;
  const [, first = "", second = "", third = ""] = found;
  const yearFirst = first.length === 4;
  if (yearFirst === (third.length === 4) || first.length === 3 || third.length === 3) return null;
  const time = timeFrom(found.slice(4));
  return time === null
    ? null
    : { numbers: [Number(first), Number(second), Number(third)], yearFirst, ...time };
}

/** A time of day alone, for files that keep it in a column of its own. */
export function readTimeCell(cell: string): Omit<DateCell, "numbers" | "yearFirst"> | null {
  const found = TIME_OF_DAY.exec(cell.trim());
  return found === null ? null : timeFrom(found.slice(1));
}

function timeFrom(groups: readonly (string | undefined)[]): Omit<DateCell, "numbers" | "yearFirst"> | null {
  const [hourWords, minuteWords, secondWords, half, zoneWords] = groups;
  const minute = Number(minuteWords ?? 0);
  const second = Number(secondWords ?? 0);
  let hour = Number(hourWords ?? 0);
  if (half !== undefined) {
    if (hour < 1 || hour > 12) return null;
    hour = (hour % 12) + (half.toLowerCase() === "p" ? 12 : 0);
  }
  // 24:00 is the midnight that ends the day.
  if (hour > 24 || minute > 59 || second > 59 || (hour === 24 && (minute > 0 || second > 0))) return null;
  return { hour, minute, second, offsetMin: offsetFrom(zoneWords) };
}

function offsetFrom(words: string | undefined): number | null {
  if (words === undefined) return null;
  if (!/^[+-]/.test(words)) return 0;
  const minutes = Number(words.slice(1, 3)) * 60 + Number(words.slice(-2));
  return words.startsWith("-") ? -minutes : minutes;
}

function fromEpoch(words: string): DateCell {
  const date = new Date(words.length === 10 ? Number(words) * 1_000 : Number(words));
  return {
    numbers: [date.getUTCFullYear(), date.getUTCMonth() + 1, date.getUTCDate()],
    yearFirst: true,
    hour: date.getUTCHours(),
    minute: date.getUTCMinutes(),
    second: date.getUTCSeconds(),
    offsetMin: 0,
  };
}

/** Clock reading as milliseconds, as if the clock stood in UTC; null for a day the calendar does not have. */
export function clockMs(cell: DateCell, order: DateOrder): number | null {
  const [a, b, c] = cell.numbers;
  const [year, month, day] =
    order === "year-month-day" ? [a, b, c] : order === "day-month-year" ? [c, b, a] : [c, a, b];
  if (cell.yearFirst !== (order === "year-month-day")) return null;
  if (year < 1990 || year > 2100 || month < 1 || month > 12 || day < 1) return null;
  const midnight = Date.UTC(year, month - 1, day);
  // 31 June and 30 February roll over into the next month: refused, not moved.
  if (day > 28 && new Date(midnight).getUTCMonth() !== month - 1) return null;
  return midnight + ((cell.hour * 60 + cell.minute) * 60 + cell.second) * 1_000;
}

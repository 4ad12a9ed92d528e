import type { Cells } from "./cells";
import { clockMs, type DateCell, readDateCell, readTimeCell } from "./date-cell";
import type { DateOrder } from "./mapping";

/** The dates of a column, one element a row: what each cell says, before it is known which number is the day. */
export type DateColumn = {
  readonly rowCount: number;
  /** 0: no date; 1: the year comes last; 2: the year comes first. */
  readonly form: Uint8Array;
  readonly numbers: readonly [Int16Array, Int16Array, Int16Array];
  readonly secondOfDay: Int32Array;
  /** Minutes ahead of UTC as written, or {@link LOCAL}. */
  readonly offsetMin: Int16Array;
};

export const LOCAL = -32_768;
const NONE = 0;
const YEAR_LAST = 1;
const YEAR_FIRST = 2;
const ZERO = 48;
const NINE = 57;
const COLON = 58;
const POINT = 46;
const SPACE = 32;
const SLASH = 47;
const DASH = 45;
const BIG_T = 84;
const SMALL_T = 116;
const DAY_S = 86_400;

/** Reads a date column, with the time of day from another when there is one. */
export function dateColumn(cells: Cells, at: number, timeAt: number | null): DateColumn {
  const { rowCount } = cells;
  const column = {
    rowCount,
    form: new Uint8Array(rowCount),
    numbers: [new Int16Array(rowCount), new Int16Array(rowCount), new Int16Array(rowCount)],
    secondOfDay: new Int32Array(rowCount),
    offsetMin: new Int16Array(rowCount).fill(LOCAL),
  } as const satisfies DateColumn;
  cells.each(at, (text, from, to, row) => {
    if (timeAt === null && readPlainDate(text, from, to, column, row)) return;
    const date = readDateCell(cells.cell(row, at));
    const time = date === null || timeAt === null ? date : readTimeCell(cells.cell(row, timeAt));
    if (date === null || time === null) return;
    column.form[row] = date.yearFirst ? YEAR_FIRST : YEAR_LAST;
    for (const place of [0, 1, 2] as const) column.numbers[place][row] = date.numbers[place];
    column.secondOfDay[row] = (time.hour * 60 + time.minute) * 60 + time.second;
    if (time.offsetMin !== null) column.offsetMin[row] = time.offsetMin;
  });
  return column;
}

/**
 * The order all dates of a column share. A number above 12 decides; else the one order in which time does not run back.
 * "unclear" when the file cannot tell, "mixed" when its dates contradict each other.
 */
export function dateOrderOf(column: DateColumn): DateOrder | "unclear" | "mixed" {
  let [dayFirst, monthFirst, yearFirst, yearLast] = [false, false, 0, 0];
  for (let row = 0; row < column.rowCount; row++) {
    if (column.form[row] === YEAR_FIRST) yearFirst++;
    else if (column.form[row] === YEAR_LAST) {
      yearLast++;
      if ((column.numbers[0][row] ?? 0) > 12) dayFirst = true;
      if ((column.numbers[1][row] ?? 0) > 12) monthFirst = true;
    }
  }
  // The few of the other form are refused row by row.
  if (yearFirst > yearLast) return "year-month-day";
  if (dayFirst && monthFirst) return "mixed";
  if (dayFirst) return "day-month-year";
  if (monthFirst) return "month-day-year";
  const [dayMs, monthMs] = [longestStepMs(column, "day-month-year"), longestStepMs(column, "month-day-year")];
  // In the wrong order midnight is a jump of a month; a difference of days is needed to call it.
  if (Math.abs(dayMs - monthMs) < 5 * 86_400_000) return "unclear";
  return dayMs < monthMs ? "day-month-year" : "month-day-year";
}

/** Clock readings as milliseconds, as if the clock stood in UTC; NaN for a day the calendar does not have. */
export function clocksOf(column: DateColumn, order: DateOrder): Float64Array {
  const clocks = new Float64Array(column.rowCount).fill(Number.NaN);
  const [a, b, c] = column.numbers;
  /** Rows of one day follow each other: its midnight is asked for once. */
  let [lastA, lastB, lastC, lastForm, midnight] = [-1, -1, -1, -1, Number.NaN];
  for (let row = 0; row < column.rowCount; row++) {
    const form = column.form[row] ?? NONE;
    if (form === NONE) continue;
    const [one, two, three] = [a[row] ?? 0, b[row] ?? 0, c[row] ?? 0];
    if (one !== lastA || two !== lastB || three !== lastC || form !== lastForm) {
      [lastA, lastB, lastC, lastForm] = [one, two, three, form];
      const cell: DateCell = { ...MIDNIGHT, numbers: [one, two, three], yearFirst: form === YEAR_FIRST };
      midnight = clockMs(cell, order) ?? Number.NaN;
    }
    clocks[row] = midnight + (column.secondOfDay[row] ?? 0) * 1_000;
  }
  return clocks;
}

const MIDNIGHT = { hour: 0, minute: 0, second: 0, offsetMin: null } as const;

function longestStepMs(column: DateColumn, order: DateOrder): number {
  let [longest, previous] = [0, Number.NaN];
  for (const now of clocksOf(column, order)) {
    if (Number.isNaN(now)) continue;
    if (!Number.isNaN(previous)) longest = Math.max(longest, Math.abs(now - previous));
    previous = now;
  }
  return longest;
}

type Written = { readonly [K in "form" | "secondOfDay" | "offsetMin"]: DateColumn[K] } & Pick<
  DateColumn,
  "numbers"
>;

/**
 * The dates nearly every logger writes: three numbers with "-", "/" or "." between them, then " " or "T" and hh:mm or hh:mm:ss, with no
 * zone. Answers false for anything else, which {@link readDateCell} then reads or refuses; both agree on what this takes.
 */
function readPlainDate(text: Uint8Array, from: number, end: number, column: Written, row: number): boolean {
  let at = from;
  let part = 0;
  let number = 0;
  let digits = 0;
  let one = 0;
  let two = 0;
  let firstDigits = 0;
  for (; at < end; at++) {
    const code = text[at] ?? 0;
    if (code >= ZERO && code <= NINE) {
      number = number * 10 + (code - ZERO);
      digits++;
      continue;
    }
    if (part === 2 || !(code === DASH || code === SLASH || code === POINT)) break;
    if (digits === 0 || digits > (part === 0 ? 4 : 2)) return false;
    if (part === 0) {
      one = number;
      firstDigits = digits;
    } else two = number;
    part++;
    number = 0;
    digits = 0;
  }
  const yearFirst = firstDigits === 4;
  if (
    part !== 2 ||
    digits === 0 ||
    digits > 4 ||
    firstDigits === 3 ||
    digits === 3 ||
    yearFirst === (digits === 4)
  )
    return false;
  const separator = at < end ? (text[at] ?? 0) : 0;
  if (separator !== SPACE && separator !== BIG_T && separator !== SMALL_T) return false;
  const seconds = plainTime(text, at + 1, end);
  if (seconds < 0) return false;
  column.form[row] = yearFirst ? YEAR_FIRST : YEAR_LAST;
  column.numbers[0][row] = one;
  column.numbers[1][row] = two;
  column.numbers[2][row] = number;
  column.secondOfDay[row] = seconds;
  return true;
}

/** Seconds of hh:mm or hh:mm:ss, the hour in one digit or two; −1 for anything else. */
function plainTime(text: Uint8Array, from: number, end: number): number {
  const colon = digitAt(text, from + 1) < 0 ? from + 1 : from + 2;
  if (colon + 3 > end || (text[colon] ?? 0) !== COLON) return -1;
  const hour = colon === from + 1 ? digitAt(text, from) : twoDigits(text, from);
  const minute = twoDigits(text, colon + 1);
  let second = 0;
  if (end !== colon + 3) {
    if (end !== colon + 6 || (text[colon + 3] ?? 0) !== COLON) return -1;
    second = twoDigits(text, colon + 4);
  }
  if (hour < 0 || minute < 0 || second < 0 || minute > 59 || second > 59) return -1;
  const seconds = (hour * 60 + minute) * 60 + second;
  return seconds > DAY_S ? -1 : seconds;
}

/** The digit at a place; −1 where there is none. */
function digitAt(text: Uint8Array, at: number): number {
  const code = text[at] ?? 0;
  return code >= ZERO && code <= NINE ? code - ZERO : -1;
}

function twoDigits(text: Uint8Array, at: number): number {
  const [high, low] = [digitAt(text, at), digitAt(text, at + 1)];
  return high < 0 || low < 0 ? -1 : high * 10 + low;
}

import type { Zone } from "luxon";
import type { Cells } from "./cells";
import type { Refused } from "./channel-values";
import { clocksOf, type DateColumn, dateColumn, dateOrderOf, LOCAL } from "./date-column";
import type { DateOrder, LogMapping } from "./mapping";
import type { Table } from "./table";
import { type FileRefusal, refuse } from "./text-of-file";
import { type ClockChange, zoneClock } from "./zone-clock";

/** A second row for the same instant: not taken. */
export type Duplicate = {
  readonly row: number;
  /** Line of the row that was taken. */
  readonly sameTimeAs: number;
  /** Whether the two rows say the same. */
  readonly equal: boolean;
};

/** The instants of a table in rising order; `order[i]` is the row behind `timeMs[i]`. */
export type TimeOrder = {
  readonly timeMs: Float64Array;
  readonly utcOffsetMin: Int16Array;
  readonly order: Uint32Array;
  readonly refused: readonly Refused[];
  readonly duplicates: readonly Duplicate[];
  readonly clockChanges: readonly ClockChange[];
  readonly reorderedRows: number;
  readonly dateOrder: DateOrder;
};

const ASSUMED = {
  "repeated hour":
    "This hour came twice; the first rows are taken as the first pass, later ones as the second.",
  "skipped hour":
    "The house's clock skipped this hour, the log's did not. When the rows after it would run back, the log's clock is taken never to change.",
} as const;

/** Reads the time columns, settles the date order, turns local time into instants and sorts them. */
export function timeOrder(table: Table, mapping: LogMapping, zone: Zone): TimeOrder | FileRefusal {
  const { headings, cells } = table;
  const timeAt = mapping.timeOfDayHeading === null ? null : headings.indexOf(mapping.timeOfDayHeading);
  const dates = dateColumn(cells, headings.indexOf(mapping.timeHeading), timeAt);
  const order = mapping.dateOrder ?? dateOrderOf(dates);
  if (order === "mixed" || order === "unclear") {
    return refuse(
      "unclear dates",
      order === "mixed"
        ? "Some dates only make sense day first, others only month or year first; export the log with one date format."
        : "The dates could be day first or month first; choose which.",
      headings,
    );
  }
  const clocks = clocksOf(dates, order);
  const refused: Refused[] = [];
  let readable = 0;
  for (let row = 0; row < clocks.length; row++) {
    if (Number.isNaN(clocks[row])) refused.push(unreadable(table, mapping, row, order));
    else readable++;
  }
  const rows = new Uint32Array(readable);
  let at = 0;
  for (let row = 0; row < clocks.length; row++) if (!Number.isNaN(clocks[row])) rows[at++] = row;
  const { timeMs, offsetMin, clockChanges } = instantsOf(cells, dates, clocks, rows, zone);
  if (rows.length === 0) {
    return refuse("no usable rows", `No row has a date that reads as ${order}.`, table.headings);
  }
  return { ...sorted(cells, rows, timeMs, offsetMin), refused, clockChanges, dateOrder: order };
}

function unreadable(table: Table, mapping: LogMapping, index: number, order: DateOrder): Refused {
  const { headings, cells } = table;
  const words = [mapping.timeHeading, mapping.timeOfDayHeading]
    .flatMap((heading) => (heading === null ? [] : [cells.cell(index, headings.indexOf(heading))]))
    .join(" ")
    .trim()
    .slice(0, 40);
  return {
    row: cells.line(index),
    heading: null,
    reason:
      words === ""
        ? "the row has no date"
        : `"${words}" is not a date and time that reads as ${order}, 1990 to 2100`,
  };
}

/** Local readings to instants, in the order the logger wrote them: newest-first files are walked from the end. */
function instantsOf(cells: Cells, dates: DateColumn, clocks: Float64Array, rows: Uint32Array, zone: Zone) {
  const newestFirst = (clocks[rows[0] ?? 0] ?? 0) > (clocks[rows.at(-1) ?? 0] ?? 0);
  if (newestFirst) rows.reverse();
  const toInstant = zoneClock(zone);
  const changes: { kind: ClockChange["kind"]; lines: number[] }[] = [];
  let open: ClockChange["kind"] | null = null;
  const timeMs = new Float64Array(rows.length);
  const offsetMin = new Int16Array(rows.length);
  for (let at = 0; at < rows.length; at++) {
    const row = rows[at] ?? 0;
    const clock = clocks[row] ?? 0;
    const said = dates.offsetMin[row] ?? LOCAL;
    if (said !== LOCAL) {
      timeMs[at] = clock - said * 60_000;
      offsetMin[at] = zone.offset(timeMs[at] ?? 0);
      continue;
    }
    const instant = toInstant(clock);
    timeMs[at] = instant.timeMs;
    offsetMin[at] = instant.offsetMin;
    if (instant.change !== null) {
      if (open !== instant.change) changes.push({ kind: instant.change, lines: [] });
      changes.at(-1)?.lines.push(cells.line(row));
    }
    open = instant.change;
  }
  const clockChanges = changes.map(({ kind, lines }): ClockChange => {
    const [first = 0, last = first] = [lines[0], lines.at(-1)];
    return {
      kind,
      fromLine: Math.min(first, last),
      toLine: Math.max(first, last),
      rows: lines.length,
      assumed: ASSUMED[kind],
    };
  });
  return { timeMs, offsetMin, clockChanges };
}

/** Sorts by time where needed and keeps the first row of each instant. Plain loops: every row of the file passes here. */
function sorted(cells: Cells, rows: Uint32Array, at: Float64Array, offsets: Int16Array) {
  const count = rows.length;
  const ranks = new Uint32Array(count);
  let reorderedRows = 0;
  let newest = Number.NEGATIVE_INFINITY;
  for (let index = 0; index < count; index++) {
    const now = at[index] ?? 0;
    ranks[index] = index;
    if (now < newest) reorderedRows++;
    else newest = now;
  }
  if (reorderedRows > 0) ranks.sort((a, b) => (at[a] ?? 0) - (at[b] ?? 0) || a - b);
  const duplicates: Duplicate[] = [];
  const timeMs = new Float64Array(count);
  const utcOffsetMin = new Int16Array(count);
  const order = new Uint32Array(count);
  let kept = 0;
  for (let index = 0; index < count; index++) {
    const rank = ranks[index] ?? 0;
    const mine = rows[rank] ?? 0;
    if (kept > 0 && at[rank] === timeMs[kept - 1]) {
      const theirs = order[kept - 1] ?? 0;
      duplicates.push({
        row: cells.line(mine),
        sameTimeAs: cells.line(theirs),
        equal: cells.sameRow(mine, theirs),
      });
      continue;
    }
    timeMs[kept] = at[rank] ?? 0;
    utcOffsetMin[kept] = offsets[rank] ?? 0;
    order[kept] = mine;
    kept++;
  }
  return {
    timeMs: timeMs.subarray(0, kept),
    utcOffsetMin: utcOffsetMin.subarray(0, kept),
    order: order.subarray(0, kept),
    duplicates,
    reorderedRows,
  };
}

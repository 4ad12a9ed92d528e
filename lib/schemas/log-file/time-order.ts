import type { Zone } from "luxon";
import type { Refused } from "./channel-values";
import { clockMs, type DateCell, dateOrderOf, readDateCell, readTimeCell } from "./date-cell";
import type { DateOrder, LogMapping } from "./mapping";
import type { Table } from "./table";
import { type FileRefusal, refuse } from "./text-of-file";
import { type ClockChange, type Instant, zoneClock } from "./zone-clock";

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
  const cells = dateCells(table, mapping);
  const order = mapping.dateOrder ?? dateOrderOf(cells);
  if (order === "mixed" || order === "unclear") {
    return refuse(
      "unclear dates",
      order === "mixed"
        ? "Some dates only make sense day first, others only month or year first; export the log with one date format."
        : "The dates could be day first or month first; choose which.",
      table.headings,
    );
  }
  const refused: Refused[] = [];
  const clocks = cells.map((cell, index) => {
    const clock = cell === null ? null : clockMs(cell, order);
    if (clock === null) refused.push(unreadable(table, mapping, index, order));
    return clock;
  });
  const { rows, instants, clockChanges } = instantsOf(table, cells, clocks, zone);
  if (rows.length === 0) {
    return refuse("no usable rows", `No row has a date that reads as ${order}.`, table.headings);
  }
  return { ...sorted(table, rows, instants), refused, clockChanges, dateOrder: order };
}

function dateCells(table: Table, mapping: LogMapping): readonly (DateCell | null)[] {
  const at = table.headings.indexOf(mapping.timeHeading);
  const timeAt = mapping.timeOfDayHeading === null ? null : table.headings.indexOf(mapping.timeOfDayHeading);
  return table.rows.map((cells) => {
    const date = readDateCell(cells[at] ?? "");
    if (date === null || timeAt === null) return date;
    const time = readTimeCell(cells[timeAt] ?? "");
    return time === null ? null : { ...date, ...time };
  });
}

function unreadable(table: Table, mapping: LogMapping, index: number, order: DateOrder): Refused {
  const cells = table.rows[index] ?? [];
  const words = [mapping.timeHeading, mapping.timeOfDayHeading]
    .flatMap((heading) => (heading === null ? [] : [cells[table.headings.indexOf(heading)] ?? ""]))
    .join(" ")
    .trim()
    .slice(0, 40);
  return {
    row: table.lines[index] ?? 0,
    heading: null,
    reason:
      words === ""
        ? "the row has no date"
        : `"${words}" is not a date and time that reads as ${order}, 1990 to 2100`,
  };
}

/** Local readings to instants, in the order the logger wrote them: newest-first files are walked from the end. */
function instantsOf(
  table: Table,
  cells: readonly (DateCell | null)[],
  clocks: readonly (number | null)[],
  zone: Zone,
) {
  const rows = clocks.flatMap((clock, index) => (clock === null ? [] : [index]));
  const newestFirst = (clocks[rows[0] ?? 0] ?? 0) > (clocks[rows.at(-1) ?? 0] ?? 0);
  if (newestFirst) rows.reverse();
  const toInstant = zoneClock(zone);
  const changes: { kind: ClockChange["kind"]; lines: number[] }[] = [];
  let open: ClockChange["kind"] | null = null;
  const instants = rows.map((index): Instant => {
    const clock = clocks[index] ?? 0;
    const said = cells[index]?.offsetMin ?? null;
    if (said !== null) {
      const timeMs = clock - said * 60_000;
      return { timeMs, offsetMin: zone.offset(timeMs), change: null };
    }
    const instant = toInstant(clock);
    if (instant.change !== null) {
      if (open !== instant.change) changes.push({ kind: instant.change, lines: [] });
      changes.at(-1)?.lines.push(table.lines[index] ?? 0);
    }
    open = instant.change;
    return instant;
  });
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
  return { rows, instants, clockChanges };
}

/** Sorts by time where needed and keeps the first row of each instant. Plain loops: every row of the file passes here. */
function sorted(table: Table, rows: readonly number[], instants: readonly Instant[]) {
  const count = rows.length;
  const at = new Float64Array(count);
  const ranks = new Uint32Array(count);
  let reorderedRows = 0;
  let newest = Number.NEGATIVE_INFINITY;
  for (let index = 0; index < count; index++) {
    const timeMs = instants[index]?.timeMs ?? 0;
    at[index] = timeMs;
    ranks[index] = index;
    if (timeMs < newest) reorderedRows++;
    else newest = timeMs;
  }
  if (reorderedRows > 0) ranks.sort((a, b) => (at[a] ?? 0) - (at[b] ?? 0) || a - b);
  const duplicates: Duplicate[] = [];
  const timeMs = new Float64Array(count);
  const utcOffsetMin = new Int16Array(count);
  const order = new Uint32Array(count);
  let kept = 0;
  for (const rank of ranks) {
    const mine = rows[rank] ?? 0;
    if (kept > 0 && at[rank] === timeMs[kept - 1]) {
      const theirs = order[kept - 1] ?? 0;
      duplicates.push({
        row: table.lines[mine] ?? 0,
        sameTimeAs: table.lines[theirs] ?? 0,
        equal: table.rows[mine]?.join("\n") === table.rows[theirs]?.join("\n"),
      });
      continue;
    }
    timeMs[kept] = at[rank] ?? 0;
    utcOffsetMin[kept] = instants[rank]?.offsetMin ?? 0;
    order[kept] = mine;
    kept++;
  }
  return {
    timeMs: timeMs.slice(0, kept),
    utcOffsetMin: utcOffsetMin.slice(0, kept),
    order: order.slice(0, kept),
    duplicates,
    reorderedRows,
  };
}

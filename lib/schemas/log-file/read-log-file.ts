import type { LogChannel, LogSamples } from "@/lib/engineering/logs";
import type { Cells } from "./cells";
import { channelValues, type Refused } from "./channel-values";
import { type LogMapping, logMappingSchema } from "./mapping";
import { suggestMapping } from "./suggest-mapping";
import { type Table, tableOf } from "./table";
import { type FileRefusal, refuse, textOfFile } from "./text-of-file";
import { type Duplicate, timeOrder } from "./time-order";
import { usualIntervalMin } from "./usual-interval";
import { type ClockChange, findZone } from "./zone-clock";

/** Time without samples, more than one and a half intervals. */
export type LogGap = { readonly afterMs: number; readonly beforeMs: number; readonly missingSamples: number };

export type LogFile = {
  readonly kind: "read";
  readonly samples: LogSamples;
  readonly refused: readonly Refused[];
  readonly duplicates: readonly Duplicate[];
  readonly gaps: readonly LogGap[];
  readonly clockChanges: readonly ClockChange[];
  /** Rows that stood before an earlier one; they were put in their place. */
  readonly reorderedRows: number;
  readonly intervalMin: number;
  /** Data rows in the file, taken or not. */
  readonly rowCount: number;
  /** How it was read, ready to be remembered for this source. */
  readonly mapping: LogMapping;
  readonly headings: readonly string[];
};

/**
 * Reads a log: text or bytes of a CSV with one row an interval, in the house's own time.
 *
 * @param file - The whole file.
 * @param asked.zone - Zone of the house's clock, such as "America/Chicago", or "UTC-6" for a clock that never changes.
 * @param asked.mapping - How this source is read; null to go by headings and values.
 * @returns Samples and everything that was not taken with its line and reason, or why the file cannot be read.
 */
export function readLogFile(file: Uint8Array | string, asked: AskedOfFile): LogFile | FileRefusal {
  const steps = readLogSteps(file, asked);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

type AskedOfFile = { readonly zone: string; readonly mapping: LogMapping | null };

/** The same in steps, so that who reads a long file can pause between them; each says which share is done, 0 to 1. */
export function* readLogSteps(
  file: Uint8Array | string,
  asked: AskedOfFile,
): Generator<number, LogFile | FileRefusal, void> {
  const zone = findZone(asked.zone);
  if (zone === null)
    return refuse("unknown zone", `"${asked.zone}" is not a known time zone; choose the home's.`);
  const text = textOfFile(file);
  if (!(text instanceof Uint8Array)) return text;
  yield 0.1;
  const table = tableOf(text);
  if ("kind" in table) return table;
  const mapping = asked.mapping ?? suggestMapping(table);
  if (mapping === null) {
    return refuse(
      "needs mapping",
      "The columns could not be told by their headings; say which is which.",
      table.headings,
    );
  }
  const fault = mappingFault(mapping, table);
  if (fault !== null) return refuse("wrong mapping", fault, table.headings);
  const chosen = onlyAskedRows(table, mapping);
  if ("kind" in chosen) return chosen;
  yield 0.3;
  const times = timeOrder(chosen, mapping, zone);
  if ("kind" in times) return times;
  const { timeMs, utcOffsetMin, order } = times;
  const intervalMin = usualIntervalMin(timeMs);
  if (intervalMin === null || intervalMin < 1 || intervalMin > 60) {
    return refuse(
      "unsuitable interval",
      intervalMin === null
        ? "The file has one usable row; a log needs many."
        : `Samples are ${Number(intervalMin.toFixed(2))} min apart; logs of 1 to 60 min are read.`,
      table.headings,
    );
  }
  const channels: { [K in LogChannel]?: Float64Array } = {};
  const refused: Refused[] = [...times.refused];
  for (const [at, { heading, channel, unit }] of mapping.columns.entries()) {
    yield 0.6 + (0.4 * at) / mapping.columns.length;
    const index = table.headings.indexOf(heading);
    const read = channelValues(chosen, order, { index, heading, channel, unit, intervalMin });
    channels[channel] = read.values;
    for (const one of read.refused) refused.push(one);
  }
  return {
    kind: "read",
    samples: { timeMs, utcOffsetMin, intervalMin, channels },
    refused: refused.sort((a, b) => a.row - b.row),
    duplicates: times.duplicates,
    gaps: gapsOf(timeMs, intervalMin),
    clockChanges: times.clockChanges,
    reorderedRows: times.reorderedRows,
    intervalMin,
    rowCount: chosen.cells.rowCount,
    mapping: { ...mapping, dateOrder: times.dateOrder },
    headings: table.headings,
  };
}

function mappingFault(mapping: LogMapping, table: Table): string | null {
  const parsed = logMappingSchema.safeParse(mapping);
  if (!parsed.success) {
    const [issue] = parsed.error.issues;
    return `The mapping is not valid: ${issue?.path.join(".") ?? ""} ${issue?.message ?? ""}`.trim();
  }
  const asked = [
    mapping.timeHeading,
    ...(mapping.timeOfDayHeading === null ? [] : [mapping.timeOfDayHeading]),
    ...mapping.columns.map(({ heading }) => heading),
    ...(mapping.onlyWhere === null ? [] : [mapping.onlyWhere.heading]),
  ];
  const missing = asked.filter((heading) => !table.headings.includes(heading));
  if (missing.length === 0) return null;
  return `The file has no column ${missing.map((name) => `"${name}"`).join(", ")}; map its columns anew.`;
}

const HOUSE_HEADING =
  /^((site|home|house|device)|(site|home|house|device|unit|thermostat)[ _-]?(id|no|number|name))$/i;

/** Where the column stands that names the house or device, or −1. */
export function houseColumn(headings: readonly string[]): number {
  return headings.findIndex((heading) => HOUSE_HEADING.test(heading));
}

/** The rows of one house. A file of several is refused until one is chosen. */
function onlyAskedRows(table: Table, mapping: LogMapping): Table | FileRefusal {
  const { onlyWhere } = mapping;
  const index = onlyWhere === null ? houseColumn(table.headings) : table.headings.indexOf(onlyWhere.heading);
  if (index === -1) return table;
  const houses = valuesIn(table.cells, index);
  const mapped = mapping.columns.some(({ heading }) => heading === table.headings[index]);
  if (onlyWhere === null) {
    if (houses.size <= 1 || mapped) return table;
    const names = [...houses].slice(0, 8).join(", ");
    return refuse(
      "several houses",
      `Column "${table.headings[index]}" has ${houses.size} values (${names}${houses.size > 8 ? ", …" : ""}); choose one.`,
      table.headings,
    );
  }
  const kept: number[] = [];
  for (let row = 0; row < table.cells.rowCount; row++)
    if (table.cells.cell(row, index).trim() === onlyWhere.value) kept.push(row);
  if (kept.length === 0) {
    return refuse(
      "no usable rows",
      `No row has "${onlyWhere.value}" in "${onlyWhere.heading}".`,
      table.headings,
    );
  }
  return { ...table, cells: table.cells.pick(Uint32Array.from(kept)) };
}

/** What stands in a column, each value once. */
export function valuesIn(cells: Cells, column: number): ReadonlySet<string> {
  const values = new Set<string>();
  for (let row = 0; row < cells.rowCount; row++) values.add(cells.cell(row, column).trim());
  return values;
}

function gapsOf(timeMs: Float64Array, intervalMin: number): readonly LogGap[] {
  const gaps: LogGap[] = [];
  const intervalMs = intervalMin * 60_000;
  for (let index = 1; index < timeMs.length; index++) {
    const afterMs = timeMs[index - 1] ?? 0;
    const beforeMs = timeMs[index] ?? 0;
    if (beforeMs - afterMs > 1.5 * intervalMs) {
      gaps.push({ afterMs, beforeMs, missingSamples: Math.round((beforeMs - afterMs) / intervalMs) - 1 });
    }
  }
  return gaps;
}

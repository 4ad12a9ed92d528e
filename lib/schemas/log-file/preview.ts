import { filesIn } from "./files-in";
import { headerFingerprint } from "./fingerprint";
import type { LogMapping } from "./mapping";
import { houseColumn, readLogFile, valuesIn } from "./read-log-file";
import { suggestMapping } from "./suggest-mapping";
import { rowOf, tableOf } from "./table";
import { type FileRefusal, textOfFile } from "./text-of-file";

/** The first rows of a file, and how it would be read. */
export type LogPreview = {
  readonly kind: "preview";
  readonly headings: readonly string[];
  readonly rows: readonly (readonly string[])[];
  readonly delimiter: string;
  readonly fingerprint: string;
  /** By headings and values; `null` when they do not tell. */
  readonly suggested: LogMapping | null;
  /** The column that names the house and the houses in it, when there is one. */
  readonly houses: { readonly heading: string; readonly names: readonly string[] } | null;
};

/** Bytes of a file looked at. */
export const PREVIEW_BYTES = 300_000;
const ROWS = 5;
const NEW_LINE = 10;

/** Looks at the beginning of an upload: a table, or the first one in an archive (then all bytes are needed). */
export function previewLog(bytes: Uint8Array): LogPreview | FileRefusal {
  const table = tableAtStart(bytes);
  if ("kind" in table) return table;
  const { headings, cells } = table;
  const house = houseColumn(headings);
  return {
    kind: "preview",
    headings,
    rows: Array.from({ length: Math.min(ROWS, cells.rowCount) }, (_, row) => rowOf(cells, row)),
    delimiter: table.delimiter,
    fingerprint: headerFingerprint(headings),
    suggested: suggestMapping(table),
    houses:
      house === -1
        ? null
        : {
            heading: headings[house] ?? "",
            names: [...valuesIn(cells, house)].slice(0, 50),
          },
  };
}

/** What a mapping makes of the beginning of an upload, in sentences. */
export function tryMapping(
  bytes: Uint8Array,
  asked: { readonly zone: string; readonly mapping: LogMapping },
) {
  const start = startOf(bytes);
  if (!(start instanceof Uint8Array)) return { ok: false, words: [start.reason] } as const;
  const file = readLogFile(start, asked);
  if (file.kind === "refused") return { ok: false, words: [file.reason] } as const;
  const { refused } = file;
  return {
    ok: true,
    words: [
      `Dates read as ${file.mapping.dateOrder ?? "written"}; rows ${Number(file.intervalMin.toFixed(2))} min apart; ${file.samples.timeMs.length} of the first ${file.rowCount} rows can be taken.`,
      ...refused
        .slice(0, 3)
        .map(({ row, heading, reason }) => `Row ${row}${heading === null ? "" : `, ${heading}`}: ${reason}`),
      ...(refused.length > 3 ? [`and ${refused.length - 3} more`] : []),
    ],
  } as const;
}

function tableAtStart(bytes: Uint8Array) {
  const start = startOf(bytes);
  if (!(start instanceof Uint8Array)) return start;
  const text = textOfFile(start);
  return text instanceof Uint8Array ? tableOf(text) : text;
}

/** The first whole rows. */
function startOf(bytes: Uint8Array): Uint8Array | FileRefusal {
  const files = filesIn(bytes);
  if ("kind" in files) return files;
  const whole = files[0]?.bytes ?? bytes;
  if (whole.length <= PREVIEW_BYTES && whole !== bytes) return whole;
  const start = whole.subarray(0, PREVIEW_BYTES);
  const end = start.lastIndexOf(NEW_LINE);
  return whole.length < PREVIEW_BYTES || end < 0 ? start : start.subarray(0, end + 1);
}

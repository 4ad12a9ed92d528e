import type { RowRemark } from "@/lib/db/logs";
import { type LogSamples, mergeSamples } from "@/lib/engineering/logs";
import { AppError } from "@/lib/errors";
import {
  atOnce,
  type FileRefusal,
  filesIn,
  type LogFile,
  type LogMapping,
  logFileSteps,
} from "@/lib/schemas/log-file";

export type ReadUpload = {
  readonly samples: LogSamples;
  readonly remarks: readonly RowRemark[];
  /** How many remarks are rows or cells that were not taken. */
  readonly notTaken: number;
  readonly rowCount: number;
  readonly mapping: LogMapping;
  readonly headings: readonly string[];
};

/** The log in an upload: one file, or all files of an archive as one log. */
export function readLogUpload(input: Uploaded, timeZone: string): ReadUpload {
  return atOnce(uploadSteps(input, timeZone));
}

type Uploaded = { readonly fileName: string; readonly bytes: Uint8Array; readonly mapping: LogMapping | null };

/** The same in short steps, each answered with the share that is done. */
export function* uploadSteps(input: Uploaded, timeZone: string): Generator<number, ReadUpload> {
  const files = filesIn(input.bytes);
  if ("kind" in files) throw refused(files, "");
  yield 0;
  const isOne = files.length === 1;
  let whole: ReadUpload | null = null;
  for (const [at, file] of files.entries()) {
    const steps = logFileSteps(file.bytes, { zone: timeZone, mapping: whole?.mapping ?? input.mapping });
    const read = yield* shareOf(steps, at, files.length);
    const one = readOne(read, isOne ? "" : `${file.name}: `);
    whole = whole === null ? one : joined(whole, one, file.name);
  }
  if (whole === null) throw new RangeError("An archive without files is refused before.");
  return whole;
}

function* shareOf<T>(steps: Generator<number, T>, at: number, of: number): Generator<number, T> {
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
    yield (at + value) / of;
  }
}

function readOne(file: LogFile | FileRefusal, where: string): ReadUpload {
  if (file.kind === "refused") throw refused(file, where);
  const { samples, rowCount, headings } = file;
  return {
    samples,
    rowCount,
    headings,
    mapping: file.mapping,
    remarks: remarksOf(file, where),
    notTaken: file.refused.length + file.duplicates.length,
  };
}

function joined(whole: ReadUpload, next: ReadUpload, name: string): ReadUpload {
  const { samples, overlap } = mergeSamples(whole.samples, next.samples);
  const twice =
    overlap === 0
      ? []
      : [
          {
            row: 0,
            reason: `${name}: ${overlap} rows repeat times of the files before it; they count once.`,
          },
        ];
  return {
    ...whole,
    samples,
    remarks: [...whole.remarks, ...twice, ...next.remarks],
    notTaken: whole.notTaken + next.notTaken,
    rowCount: whole.rowCount + next.rowCount,
  };
}

function refused(file: FileRefusal, where: string): AppError {
  const message = `${where}${file.reason}`;
  return new AppError("UNSUPPORTED_FILE", message, {
    fields: [{ field: file.code === "unknown zone" ? "timeZone" : "file", message }],
    details: { reason: file.code, headings: file.headings },
  });
}

function remarksOf(file: LogFile, where: string): readonly RowRemark[] {
  return [
    ...file.clockChanges.map(({ kind, fromLine, toLine, assumed }) => ({
      row: fromLine,
      reason: `${where}${kind === "repeated hour" ? "Repeated hour" : "Skipped hour"} of the clock change, to row ${toLine}. ${assumed}`,
    })),
    ...(file.reorderedRows === 0
      ? []
      : [
          {
            row: 0,
            reason: `${where}${file.reorderedRows} rows stood before an earlier one; they were put in their place.`,
          },
        ]),
    ...file.refused.map(({ row, heading, reason }) => ({
      row,
      reason: heading === null ? `${where}${reason}` : `${where}${heading}: ${reason}`,
    })),
    ...file.duplicates.map(({ row, sameTimeAs, equal }) => ({
      row,
      reason: `${where}Same time as row ${sameTimeAs}${equal ? " and the same values" : ", with other values"}; the first one counts.`,
    })),
  ];
}

import type { RowRemark } from "@/lib/db/logs";
import { type LogSamples, mergeSamples } from "@/lib/engineering/logs";
import { AppError } from "@/lib/errors";
import {
  type FileRefusal,
  filesIn,
  type LogFile,
  type LogMapping,
  type NamedFile,
  readLogSteps,
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

/** Called between two steps with the share that is done, 0 to 1; what it throws ends the reading. */
export type Pause = (share: number) => Promise<void>;

/** The log in an upload: one file, or all files of an archive as one log. */
export async function readLogUpload(
  input: { readonly fileName: string; readonly bytes: Uint8Array; readonly mapping: LogMapping | null },
  timeZone: string,
  pause: Pause = async () => undefined,
): Promise<ReadUpload> {
  const files = filesIn(input.bytes);
  if ("kind" in files) throw refused(files, "");
  const [first, ...rest] = files;
  if (first === undefined) throw new RangeError("An archive without files is refused before.");
  const isOne = rest.length === 0;
  const pauseIn = (at: number) => (share: number) => pause((at + share) / files.length);
  let whole = await readOne(first, isOne, { zone: timeZone, mapping: input.mapping }, pauseIn(0));
  const { mapping } = whole;
  for (const [at, file] of rest.entries())
    whole = joined(
      whole,
      await readOne(file, isOne, { zone: timeZone, mapping }, pauseIn(at + 1)),
      file.name,
    );
  return whole;
}

async function readOne(
  { name, bytes }: NamedFile,
  isOne: boolean,
  asked: { readonly zone: string; readonly mapping: LogMapping | null },
  pause: Pause,
): Promise<ReadUpload> {
  const where = isOne ? "" : `${name}: `;
  const steps = readLogSteps(bytes, asked);
  let step = steps.next();
  for (; !step.done; step = steps.next()) await pause(step.value);
  const file = step.value;
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

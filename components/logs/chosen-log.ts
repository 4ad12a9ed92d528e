import { MOST_LOG_BYTES } from "@/lib/domain/file-limits";
import {
  type LogMapping,
  type LogPreview,
  logMappingSchema,
  PREVIEW_BYTES,
  previewLog,
} from "@/lib/schemas/log-file";
import type { LogSourceData } from "./log-data";

/** A file a person has chosen, looked at before it is sent. */
export type ChosenLog = {
  /** Names the choice, so that another file begins anew. */
  readonly key: number;
  readonly file: File;
  /** Its first bytes; all of an archive. */
  readonly start: Uint8Array;
  readonly preview: LogPreview;
  /** The logger whose headings these are. */
  readonly known: LogSourceData | null;
  readonly mapping: LogMapping | null;
};

/** Looks at a file's beginning, or says why it is no log. */
export async function chosenLog(file: File, sources: readonly LogSourceData[]): Promise<ChosenLog | string> {
  if (file.size > MOST_LOG_BYTES) return "The file is larger than 50 MB. Split it, for instance by year.";
  const [p, k] = new Uint8Array(await file.slice(0, 2).arrayBuffer());
  const isArchive = p === 0x50 && k === 0x4b;
  const start = new Uint8Array(await (isArchive ? file : file.slice(0, PREVIEW_BYTES)).arrayBuffer());
  const preview = previewLog(start);
  if (preview.kind === "refused") return preview.reason;
  const source = sources.find(({ headerFingerprint }) => headerFingerprint === preview.fingerprint) ?? null;
  const remembered = logMappingSchema.safeParse(source?.mapping);
  return {
    key: Date.now(),
    file,
    start,
    preview,
    known: remembered.success ? source : null,
    mapping: remembered.success ? remembered.data : preview.suggested,
  };
}

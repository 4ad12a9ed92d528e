import { type Unzipped, unzipSync } from "fflate";
import { MOST_LOG_BYTES } from "@/lib/domain/file-limits";
import { type FileRefusal, refuse } from "./text-of-file";

export type NamedFile = { readonly name: string; readonly bytes: Uint8Array };

const MOST_FILES = 400;
const ZIP = [0x50, 0x4b, 0x03, 0x04];
/** A workbook is a zip archive too; these are in every one. */
const WORKBOOK = /^(\[Content_Types\]\.xml|xl\/)/i;
const TABLE = /\.(csv|tsv|tab|txt)$/i;

/** The tables in an upload: the file itself, or those of a zip archive by name. Nothing is unpacked before its size is known. */
export function filesIn(bytes: Uint8Array): readonly NamedFile[] | FileRefusal {
  if (!ZIP.every((byte, index) => bytes[index] === byte)) {
    if (bytes.length <= MOST_LOG_BYTES) return [{ name: "", bytes }];
    return refuse(
      "too large",
      `The file is larger than ${MOST_LOG_BYTES / 1_000_000} MB. Send it in parts, for instance by year.`,
    );
  }
  const seen = { workbook: false, tooLarge: false, count: 0, size: 0 };
  let unpacked: Unzipped;
  try {
    unpacked = unzipSync(bytes, {
      filter: ({ name, originalSize }) => {
        seen.workbook ||= WORKBOOK.test(name);
        if (!TABLE.test(name) || name.startsWith("__MACOSX/") || seen.workbook) return false;
        seen.count++;
        seen.size += originalSize;
        // The announced size is all that is ever written, so an archive that lies yields a cut file, not a full memory.
        seen.tooLarge ||= seen.size > MOST_LOG_BYTES || seen.count > MOST_FILES;
        return !seen.tooLarge;
      },
    });
  } catch {
    return refuse("archive", "The zip archive is damaged or locked. Unpack it and choose the CSV inside.");
  }
  if (seen.workbook) {
    return refuse(
      "spreadsheet",
      "This is a spreadsheet workbook. Save the sheet as CSV and choose that file.",
    );
  }
  if (seen.tooLarge) {
    return refuse(
      "too large",
      `The archive unpacks to more than ${MOST_LOG_BYTES / 1_000_000} MB or ${MOST_FILES} files. Send it in parts, for instance by year.`,
    );
  }
  const files = Object.entries(unpacked)
    .map(([name, content]) => ({ name, bytes: content }))
    .sort((a, b) => a.name.localeCompare(b.name, "en"));
  if (files.length === 0) {
    return refuse("archive", "The zip archive holds no .csv, .tsv or .txt file. Choose the log's table.");
  }
  return files;
}

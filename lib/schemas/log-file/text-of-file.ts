import { isUtf8, partOf } from "./text-codes";

/** Why a whole file cannot be read. */
export const FILE_REFUSALS = [
  "empty",
  "too large",
  "not text",
  "spreadsheet",
  "archive",
  "web page",
  "other text",
  "no table",
  "needs mapping",
  "wrong mapping",
  "unknown zone",
  "unclear dates",
  "several houses",
  "no usable rows",
  "unsuitable interval",
] as const;
export type FileRefusal = {
  readonly kind: "refused";
  readonly code: (typeof FILE_REFUSALS)[number];
  /** What is wrong and what to do, in one or two sentences. */
  readonly reason: string;
  /** The column headings, once they could be read, so that the person can map them. */
  readonly headings: readonly string[];
};

/** The byte-order mark of UTF-8. */
const MARK = [0xef, 0xbb, 0xbf];

/** Larger than ten years of minutes with thirty columns. */
const MOST_BYTES = 400_000_000;

export function refuse(
  code: FileRefusal["code"],
  reason: string,
  headings: readonly string[] = [],
): FileRefusal {
  return { kind: "refused", code, reason, headings };
}

const SIGNATURES: readonly (readonly [readonly number[], FileRefusal["code"], string])[] = [
  [
    [0x50, 0x4b, 0x03, 0x04],
    "spreadsheet",
    "This is a spreadsheet workbook or a zip archive. Save the sheet as CSV, or unpack it.",
  ],
  [[0xd0, 0xcf, 0x11, 0xe0], "spreadsheet", "This is an old spreadsheet workbook. Save the sheet as CSV."],
  [[0x1f, 0x8b], "archive", "This is a compressed file. Unpack it and choose the CSV inside."],
  [[0x37, 0x7a, 0xbc, 0xaf], "archive", "This is a compressed archive. Unpack it and choose the CSV inside."],
  [[0x25, 0x50, 0x44, 0x46], "not text", "This is a PDF. Export the log as CSV instead."],
];

/** The text of a file in UTF-8, or why it is no table of text. */
export function textOfFile(file: Uint8Array | string): Uint8Array | FileRefusal {
  if (file.length > MOST_BYTES)
    return refuse("too large", "The file is larger than 400 MB. Split it by year.");
  const text = typeof file === "string" ? encoded(file.replace(/^\uFEFF/, "")) : inUtf8(file);
  if (!(text instanceof Uint8Array)) return text;
  const start = partOf(text, 0, 2_000).trimStart();
  if (start === "" && partOf(text, 0, text.length).trim() === "")
    return refuse("empty", "The file is empty. Export the log again.");
  if (text.includes(0)) return refuse("not text", "The file is not text. Export the log as CSV.");
  if (/^<(!doctype|html|\?xml|[a-z]+[\s>])/i.test(start)) {
    return refuse(
      "web page",
      "This is a web page or XML, not a table. Often a sign-in page was saved; download the CSV again.",
    );
  }
  if (/^[{[]\s*["{[]/.test(start))
    return refuse("other text", "This is JSON, not a table. Export the log as CSV.");
  return text;
}

const encoded = (text: string) => new TextEncoder().encode(text);

function inUtf8(bytes: Uint8Array): Uint8Array | FileRefusal {
  for (const [signature, code, reason] of SIGNATURES) {
    if (signature.every((byte, index) => bytes[index] === byte)) return refuse(code, reason);
  }
  const wide =
    bytes[0] === 0xff && bytes[1] === 0xfe
      ? "utf-16le"
      : bytes[0] === 0xfe && bytes[1] === 0xff
        ? "utf-16be"
        : null;
  // TextDecoder takes the byte-order mark away.
  if (wide !== null) return encoded(new TextDecoder(wide).decode(bytes));
  if (bytes.subarray(0, 8_000).includes(0))
    return refuse("not text", "The file is not text. Export the log as CSV.");
  // Not UTF-8: the usual other one, in which at least "°" and letters come out right.
  if (!isUtf8(bytes)) return encoded(new TextDecoder("windows-1252").decode(bytes));
  return MARK.every((byte, index) => bytes[index] === byte) ? bytes.subarray(MARK.length) : bytes;
}

/** What a stored file is for. Each kind has its own list of allowed types and its own size limit. */
export type FileKind = "photo" | "report" | "logo" | "packet" | "view" | "log" | "weather";

type Limits = {
  readonly mimes: readonly string[];
  readonly maxBytes: number;
  /** What to do instead, shown when a file is refused. */
  readonly fix: string;
};

const MiB = 1024 * 1024;

export const FILE_KINDS: Readonly<Record<FileKind, Limits>> = {
  photo: {
    mimes: ["image/jpeg", "image/png", "image/webp", "image/heic"],
    maxBytes: 20 * MiB,
    fix: "Send a JPEG, PNG, WebP or HEIC picture of at most 20 MB.",
  },
  report: {
    mimes: ["application/pdf"],
    maxBytes: 30 * MiB,
    fix: "Send the report as a PDF of at most 30 MB.",
  },
  logo: {
    mimes: ["image/png"],
    maxBytes: 2 * MiB,
    fix: "Send a logo that has been cleaned to PNG, at most 2 MB.",
  },
  packet: {
    mimes: ["application/pdf"],
    maxBytes: 60 * MiB,
    fix: "A packet is a PDF of at most 60 MB.",
  },
  view: {
    mimes: ["application/gzip"],
    maxBytes: 20 * MiB,
    fix: "What a packet prints is packed text of at most 20 MB.",
  },
  log: {
    mimes: ["text/csv", "application/zip"],
    maxBytes: 50_000_000,
    fix: "Send the log as text (CSV) or a ZIP of such files, at most 50 MB.",
  },
  weather: {
    mimes: ["text/csv"],
    maxBytes: 10 * MiB,
    fix: "Send an EPW weather file of at most 10 MB.",
  },
};

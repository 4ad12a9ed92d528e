import type { JobId, PacketId } from "./ids";

export const PACKET_KINDS = ["homeowner", "crew", "file", "review"] as const;
export type PacketKind = (typeof PACKET_KINDS)[number];
export const PACKET_LANGUAGES = ["en", "es"] as const;
export type PacketLanguage = (typeof PACKET_LANGUAGES)[number];
export const PACKET_PAPERS = ["letter", "a4"] as const;
export type PacketPaper = (typeof PACKET_PAPERS)[number];

export const PACKET_KIND_NAMES: Readonly<Record<PacketKind, string>> = {
  homeowner: "Homeowner packet",
  crew: "Crew sheet",
  file: "File packet",
  review: "Humidity review",
};

/** What each packet is for, in a line. */
export const PACKET_KIND_HINTS: Readonly<Record<PacketKind, string>> = {
  homeowner: "What was promised, installed, set and measured, in plain words.",
  crew: "One sheet for the attic: settings, aims, cautions, blanks to write on.",
  file: "Every record, finding, instrument and photograph, for the file and an inspector.",
  review: "What the log shows, what was changed, when to look again.",
};

export const PACKET_LANGUAGE_NAMES: Readonly<Record<PacketLanguage, string>> = {
  en: "English",
  es: "Spanish",
};
export const PACKET_PAPER_NAMES: Readonly<Record<PacketPaper, string>> = { letter: "Letter", a4: "A4" };

/** The languages a kind of packet is written in; working papers are for the trade. */
export const LANGUAGES_OF: Readonly<Record<PacketKind, readonly PacketLanguage[]>> = {
  homeowner: ["en", "es"],
  crew: ["en"],
  file: ["en"],
  review: ["en"],
};

/** One file as it was made. It never changes. */
export type Packet = {
  readonly id: PacketId;
  readonly kind: PacketKind;
  readonly language: PacketLanguage;
  readonly paper: PacketPaper;
  readonly revision: number;
  readonly sha256: string;
  readonly inputsHash: string;
  /** The stored file of everything it prints; empty in a packet older than this. */
  readonly viewSha256: string;
  /** What printed it. */
  readonly renderer: string;
  readonly sizeBytes: number;
  readonly pages: number;
  readonly createdAt: string;
  readonly createdByName: string;
};

export type NewPacket = Pick<
  Packet,
  | "kind"
  | "language"
  | "paper"
  | "revision"
  | "sha256"
  | "inputsHash"
  | "viewSha256"
  | "renderer"
  | "sizeBytes"
  | "pages"
> & { readonly jobId: JobId; readonly engineVersion: string };

type Series = Pick<Packet, "kind" | "language" | "paper" | "revision">;

/** The newest packet of the same kind, language and paper that replaced this one, or `null` while none did. */
export function replacedBy<P extends Series>(packet: Series, all: readonly P[]): P | null {
  const newer = all.filter(
    (one) =>
      one.kind === packet.kind &&
      one.language === packet.language &&
      one.paper === packet.paper &&
      one.revision > packet.revision,
  );
  return newer.toSorted((one, other) => other.revision - one.revision)[0] ?? null;
}

/** One link that opens a packet without a sign-in. */
export type PacketShare = {
  readonly id: string;
  readonly packetId: PacketId;
  /** `mail`: sent to somebody; `code`: printed in the packet itself. */
  readonly purpose: "mail" | "code";
  readonly sentTo: string;
  readonly message: string;
  /** Why the mail has not gone out yet; empty when nothing has failed. */
  readonly sendProblem: string;
  readonly sha256: string;
  readonly createdAt: string;
  readonly createdByName: string;
  readonly sentAt: string | null;
  readonly expiresAt: string;
  readonly revokedAt: string | null;
  readonly firstOpenedAt: string | null;
  readonly lastOpenedAt: string | null;
  readonly openCount: number;
};

export type ShareState = "open" | "expired" | "withdrawn";

export function shareState(
  { revokedAt, expiresAt }: Pick<PacketShare, "revokedAt" | "expiresAt">,
  now: Date,
): ShareState {
  if (revokedAt !== null) return "withdrawn";
  return new Date(expiresAt) <= now ? "expired" : "open";
}

import type { PacketPaper } from "./packets";

/** The owner's digest of one month as it was made. It never changes. */
export type KeptMonth = {
  readonly id: string;
  /** `2026-07` */
  readonly month: string;
  readonly revision: number;
  readonly paper: PacketPaper;
  readonly sha256: string;
  readonly inputsHash: string;
  readonly viewSha256: string;
  readonly renderer: string;
  readonly sizeBytes: number;
  readonly pages: number;
  readonly createdAt: string;
  readonly createdByName: string;
};

export type NewMonth = Omit<KeptMonth, "id" | "createdAt" | "createdByName">;

import type { Packet } from "./packets";

/** The owner's digest of one month as it was made. It never changes. */
export type KeptMonth = Omit<Packet, "id" | "kind" | "language"> & {
  readonly id: string;
  /** `2026-07` */
  readonly month: string;
};

export type NewMonth = Omit<KeptMonth, "id" | "createdAt" | "createdByName">;

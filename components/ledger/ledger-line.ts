import type { Verdict } from "@/lib/engineering/findings";

/** The four columns, in the order a job is lived. */
export const LEDGER_COLUMNS = [
  { key: "designed", title: "Designed", meaning: "what design needs" },
  { key: "set", title: "Set", meaning: "what it is set to give" },
  { key: "measured", title: "Measured", meaning: "what instruments read" },
  { key: "lived", title: "Lived", meaning: "what the house shows" },
] as const;
export type LedgerColumn = (typeof LEDGER_COLUMNS)[number]["key"];

/** One entry of the ledger as it is drawn. */
export type LedgerCell = {
  /** A number in the line's unit, a word, or `null`: nothing recorded. */
  readonly value: number | string | null;
  /** Expanded uncertainty (k = 2) in the line's unit. */
  readonly uncertainty?: number | undefined;
  readonly verdict: Verdict | null;
  readonly note?: string | undefined;
  /** Where the entry comes from. */
  readonly href: string | null;
};

export type LedgerLine = {
  readonly key: string;
  readonly label: string;
  readonly unit: string;
  readonly decimals: number;
  /** A column left out is drawn empty. */
  readonly cells: Readonly<Partial<Record<LedgerColumn, LedgerCell>>>;
  readonly verdict: Verdict | null;
};

/** Lines under one heading, named by their keys. */
export type LedgerGroup = {
  readonly key: string;
  readonly title: string;
  readonly lines: readonly string[];
};

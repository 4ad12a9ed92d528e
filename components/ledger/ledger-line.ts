import { COLUMN_MEANINGS, COLUMN_NAMES, COLUMNS, type Column } from "@/lib/domain/ledger";
import type { Verdict } from "@/lib/engineering/findings";

/** The four columns as they are headed, in the order a job is lived. */
export const LEDGER_COLUMNS = COLUMNS.map((key) => ({
  key,
  title: COLUMN_NAMES[key],
  meaning: COLUMN_MEANINGS[key],
}));

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
  readonly cells: Readonly<Partial<Record<Column, LedgerCell>>>;
  readonly verdict: Verdict | null;
};

/** Lines under one heading, named by their keys. */
export type LedgerGroup = {
  readonly key: string;
  readonly title: string;
  readonly lines: readonly string[];
};

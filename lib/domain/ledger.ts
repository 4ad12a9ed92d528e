import type { Verdict } from "@/lib/engineering/findings";
import type { StageKey } from "./stages/keys";

/** The four columns of the ledger, in the order of the chain. */
export const COLUMNS = ["designed", "set", "measured", "lived"] as const;
export type Column = (typeof COLUMNS)[number];

export const COLUMN_NAMES: Readonly<Record<Column, string>> = {
  designed: "Designed",
  set: "Set",
  measured: "Measured",
  lived: "Lived",
};

/** What each column tells, in a few words. */
export const COLUMN_MEANINGS: Readonly<Record<Column, string>> = {
  designed: "what design needs",
  set: "what it is set to give",
  measured: "what instruments read",
  lived: "what the house shows",
};

/** One figure of a line: where it comes from, and how sure it is. */
export type LedgerCell = {
  /** `null`: nothing is known yet. Text for a setting that is not a number. */
  readonly value: number | string | null;
  /** Expanded uncertainty (k = 2) in the line's unit, when known. */
  readonly uncertainty: number | null;
  readonly verdict: Verdict | null;
  /** A short remark under the figure, such as the limit it is held against. */
  readonly note: string | null;
  /** The stage record that holds the evidence, and the field in it. */
  readonly evidence: { readonly stage: StageKey; readonly field: string | null } | null;
};

/** One quantity that decides comfort, followed from design to daily life. */
export type LedgerLine = {
  readonly key: string;
  readonly group: string;
  readonly label: string;
  readonly unit: string;
  readonly decimals: number;
  readonly cells: Readonly<Record<Column, LedgerCell>>;
  readonly verdict: Verdict | null;
};

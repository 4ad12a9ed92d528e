/** A cell that cannot be used: where it stands, why, and what would mend it. */
export type RefusedCell = {
  /** Place of the row in the block, from 0. */
  readonly row: number;
  /** Line of the pasted text, from 1. */
  readonly line: number;
  readonly quantity: string;
  /** What the person sees above the cell. */
  readonly column: string;
  readonly text: string;
  readonly reason: string;
  readonly fix: string;
};

/** A row of which every cell could be read; laws between rows still to be asked. */
export type ReadRow<Values> = { readonly row: number; readonly values: Values };
export type Refuse = (row: number, quantity: string, reason: string, fix: string) => RefusedCell;

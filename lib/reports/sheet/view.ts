import type { ChartGeometry } from "@/lib/charts/geometry";
import type { Basis, Verdict } from "@/lib/engineering/findings";
import type { JudgedFigure } from "../figures";
import type { LabelledText, LedgerGroup, PacketBrand } from "../homeowner/view";

/** Everything a working paper prints (crew sheet, file, humidity review, owner's month), finished. */
export type SheetView = {
  readonly paper: "letter" | "a4";
  readonly documentId: string;
  readonly revisionNote: string;
  /** `2026-07-31`: the day printed, and the file's creation date. */
  readonly createdOn: string;
  /** Printed on every page of a copy for the record: that a newer packet has replaced this one. */
  readonly replacedNote?: string;
  readonly brand: PacketBrand;
  readonly title: string;
  /** Whose it is: the customer, or the company. */
  readonly name: string;
  readonly nameLines: readonly string[];
  /** Short facts at the head: job, startup, equipment. */
  readonly facts: readonly LabelledText[];
  /** Smaller type and narrower margins, for a sheet that has to stay one page. */
  readonly dense: boolean;
  readonly sections: readonly SheetSection[];
};

export type SheetSection = {
  readonly title: string;
  readonly lead?: string;
  readonly blocks: readonly Block[];
};

/** One kind of thing a section holds. */
export type Block =
  | {
      readonly kind: "heading";
      readonly text: string;
      readonly note?: string;
      readonly verdict?: Verdict | null;
    }
  | { readonly kind: "words"; readonly words: string }
  | { readonly kind: "facts"; readonly rows: readonly LabelledText[] }
  | TableBlock
  | { readonly kind: "list"; readonly items: readonly string[]; readonly numbered: boolean }
  | { readonly kind: "findings"; readonly findings: readonly PrintedFinding[] }
  | { readonly kind: "figures"; readonly heading: string; readonly figures: readonly JudgedFigure[] }
  | { readonly kind: "ledger"; readonly groups: readonly LedgerGroup[] }
  | { readonly kind: "chart"; readonly chart: ChartGeometry }
  | { readonly kind: "photos"; readonly photos: readonly PrintedPhoto[] }
  | { readonly kind: "cautions"; readonly items: readonly string[] }
  | { readonly kind: "blanks"; readonly heads: readonly string[]; readonly labels: readonly BlankLine[] };

/** A line to write on, with the unit at its end. */
export type BlankLine = { readonly label: string; readonly unit: string };

export type TableBlock = {
  readonly kind: "table";
  readonly columns: readonly TableColumn[];
  readonly rows: readonly (readonly string[])[];
  /** Said in place of a table without rows. */
  readonly ifNone: string;
};

export type TableColumn = {
  readonly head: string;
  /** Points; without it the column takes its share of what is left. */
  readonly width?: number;
  readonly strong?: boolean;
  readonly align?: "right";
};

export type PrintedFinding = {
  readonly title: string;
  readonly verdict: Verdict | null;
  readonly statement: string;
  readonly figures: readonly string[];
  readonly basis: Basis;
  readonly nextStep: string | null;
  readonly caution: string | null;
};

export type PrintedPhoto = {
  /** A JPEG, already made small for paper. */
  readonly jpeg: Uint8Array;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly caption: string;
};

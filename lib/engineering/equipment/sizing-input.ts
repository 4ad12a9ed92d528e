import type { Figure } from "../findings";
import type { EquipmentKind } from "./cooling-ratios";

/** Which edition of the sizing rules holds. Numbers of later editions are not encoded: the company enters them. */
export type SizingEdition =
  | { readonly name: "Manual S-2014" }
  | {
      readonly name: "later edition";
      /** Most total capacity over load; `null` until the company has entered it. */
      readonly totalMaxRatio: number | null;
      /** Most of the equipment's least capacity over load (turn-down); `null` until entered. */
      readonly leastCapacityMaxRatio: number | null;
    };

export type SizingInput = {
  readonly kind: EquipmentKind;
  readonly heatPump: boolean;
  readonly edition: SizingEdition;
  readonly sensibleLoadBtuh: number | null;
  readonly latentLoadBtuh: number | null;
  readonly totalCapacityBtuh: number | null;
  readonly sensibleCapacityBtuh: number | null;
  /** Least total cooling capacity of variable-speed equipment at the design condition. */
  readonly leastCapacityBtuh: number | null;
  readonly heatingDegreeDays65: number | null;
  readonly coolingDegreeDays50: number | null;
};

/** What the sizing ratios cannot do without. */
export const NEEDED = [
  "sensibleLoadBtuh",
  "latentLoadBtuh",
  "totalCapacityBtuh",
  "sensibleCapacityBtuh",
] as const;

/** The edition that sizes variable-speed heat pumps to heating, where it applies to this equipment; otherwise `null`. */
export function laterEdition(input: SizingInput) {
  const { edition, heatPump, kind } = input;
  return edition.name === "later edition" && heatPump && kind === "variable speed" ? edition : null;
}

/**
 * A ratio as a figure.
 *
 * @param label - What over what.
 * @param value - Ratio, 0 or more.
 */
export function ratioFigure(label: string, value: number): Figure {
  return { label, value, unit: "ratio", decimals: 2 };
}

/**
 * Whole units with thousands separators.
 *
 * @param value - Any unit; rounded to 1.
 */
export function whole(value: number): string {
  return Math.round(value).toLocaleString("en-US");
}

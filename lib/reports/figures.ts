import type { Verdict } from "@/lib/engineering/findings";

/** A number ready to print: digits grouped and rounded, the unit beside it. `null` prints as "not measured". */
export type PrintedFigure = {
  readonly label: string;
  readonly value: string | null;
  readonly unit: string;
  /** The expanded uncertainty in the same unit, without the sign: `38` prints as `± 38`. */
  readonly uncertainty?: string;
};

/** A figure with its verdict, what was aimed for, and one plain sentence for somebody outside the trade. */
export type JudgedFigure = PrintedFigure & {
  /** `null`: for information. */
  readonly verdict: Verdict | null;
  /** The aim with its unit, for instance `1,000 to 1,100 cfm`. */
  readonly aim: string | null;
  readonly plainWords: string | null;
  readonly strip: RangeStrip | null;
};

/**
 * The picture beside a measured figure: where the reading and its uncertainty lie against the aim. Positions
 * are in percent of the strip's width, 0 to 100; the scale was chosen by whoever made the view.
 */
export type RangeStrip = {
  /** The aim; an open end lies at 0 or 100. */
  readonly aimFrom: number;
  readonly aimTo: number;
  readonly at: number;
  /** The ends of the uncertainty interval; equal to `at` when it is not known. */
  readonly low: number;
  readonly high: number;
};

/** A figure for information: no verdict, aim or words of its own. */
export function plainFigure(label: string, value: string, unit: string): JudgedFigure {
  return { label, value, unit, verdict: null, aim: null, plainWords: null, strip: null };
}

/** Something that may be behind a humid house: what in the log speaks for it, what against, what would settle it. */
export type LikelyCause = {
  readonly id: string;
  readonly title: string;
  readonly evidence: readonly string[];
  readonly against: readonly string[];
  readonly nextCheck: string;
};

/** One sign of a cause: for it (true), against it (false), or not to be had from this log (null). */
export type Sign = {
  readonly holds: boolean | null;
  readonly words: string;
  /** How much it counts when it holds; 1 unless it is hard to explain otherwise. Against a cause every sign counts 1. */
  readonly weight: number;
};

/** A cause with all its signs, before they are sorted into for and against. */
export type Weighed = Omit<LikelyCause, "evidence" | "against"> & { readonly signs: readonly Sign[] };

/**
 * A number against a limit as a sign; null when the log does not give the number.
 *
 * @param value - Number of the analysis in its own unit; ranges at the analysis.
 * @param weight - How much it counts when it holds, 1 to 3.
 */
export function sign(
  value: number | null | undefined,
  holds: (value: number) => boolean,
  words: (value: number) => string,
  weight = 1,
): Sign {
  return value === null || value === undefined
    ? { holds: null, words: "", weight }
    : { holds: holds(value), words: words(value), weight };
}

/**
 * A share as whole percent.
 *
 * @param share - 0 to 1.
 */
export const pct = (share: number) => `${(share * 100).toFixed(0)} %`;

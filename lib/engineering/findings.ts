/** What one checked statement says. `null` on a finding means: for information, no verdict. */
export const VERDICTS = ["meets", "falls short", "can't tell", "not measured"] as const;
export type Verdict = (typeof VERDICTS)[number];

/**
 * How certain the fact behind a rule is.
 * published: read in a public source · computed: follows from a stated formula or a general property library ·
 * recalled: from memory, sure · unverified: from memory, to be verified against the standard ·
 * practice: common practice, no source.
 */
export const CERTAINTIES = ["published", "computed", "recalled", "unverified", "practice"] as const;
export type Certainty = (typeof CERTAINTIES)[number];

/** What a rule rests on. */
export type Basis = {
  readonly kind:
    | "published source"
    | "maker's data"
    | "company rule"
    | "common practice, no source"
    | "physics";
  /** The source in words: standard, edition, chapter, or the physical law. */
  readonly source: string;
  readonly certainty: Certainty;
};

/** A rule of the product: one thing it checks or computes, with what it rests on. */
export type Rule = {
  /** Stable id, `folder.name`, for instance `airflow.cooling-cfm-per-ton`. */
  readonly id: string;
  readonly title: string;
  /** The equation or comparison in one line of plain text. */
  readonly equation: string;
  readonly basis: Basis;
  /** The keys of the company limits this rule reads. */
  readonly limits: readonly string[];
  /** Path of the test that checks it, from the project's root. */
  readonly checkedBy: string;
};

/** A number shown in a finding, always with its unit. */
export type Figure = {
  readonly label: string;
  readonly value: number;
  readonly unit: string;
  /** Digits after the point on screen and paper. */
  readonly decimals: number;
  /** Expanded uncertainty (k = 2) in the same unit, when known. */
  readonly uncertainty?: number;
};

/** One checked statement. */
export type Finding = {
  readonly ruleId: string;
  readonly title: string;
  /** `null`: for information only. */
  readonly verdict: Verdict | null;
  /** False when the fact is unverified: such a finding never fails a job by itself. */
  readonly binding: boolean;
  /** One plain sentence with the numbers in it. */
  readonly statement: string;
  readonly figures: readonly Figure[];
  readonly basis: Basis;
  /** What to do, or which reading would settle it. */
  readonly nextStep: string | null;
  readonly caution: string | null;
  /** The input fields it used or misses. */
  readonly inputs: readonly string[];
};

/** Makes a finding from its rule, so that title, basis and weight always come from one place. */
export function finding(
  rule: Rule,
  said: {
    readonly verdict: Verdict | null;
    readonly statement: string;
    readonly figures?: readonly Figure[];
    readonly nextStep?: string | null;
    readonly caution?: string | null;
    readonly inputs?: readonly string[];
  },
): Finding {
  return {
    ruleId: rule.id,
    title: rule.title,
    verdict: said.verdict,
    binding: rule.basis.certainty !== "unverified",
    statement: said.statement,
    figures: said.figures ?? [],
    basis: rule.basis,
    nextStep: said.nextStep ?? null,
    caution: said.caution ?? null,
    inputs: said.inputs ?? [],
  };
}

/** The finding for a rule whose inputs are missing. */
export function notMeasured(rule: Rule, missing: readonly string[], nextStep: string): Finding {
  return finding(rule, {
    verdict: "not measured",
    statement: "Not all readings this needs have been entered.",
    nextStep,
    inputs: missing,
  });
}

/**
 * The verdict on an interval `value ± uncertainty` against limits.
 * Passes wholly → meets; fails wholly → falls short; straddles a limit → can't tell.
 * An end that is not limited is `null`. Limits themselves pass.
 *
 * @param value - In the unit of the limits; NaN or infinite is `not measured`, 0 and below count.
 * @param uncertainty - Expanded uncertainty in the same unit, 0 or more.
 * @param limits - Limits in the same unit; an open end is `null`, 0 is a limit.
 * @returns The verdict.
 * @see JCGM 106:2012, conformity with guard bands (recalled).
 */
export function verdictOnInterval(
  value: number,
  uncertainty: number,
  limits: { readonly min: number | null; readonly max: number | null },
): Verdict {
  const low = value - uncertainty;
  const high = value + uncertainty;
  if (!(Number.isFinite(low) && Number.isFinite(high))) return "not measured";
  const min = limits.min ?? Number.NEGATIVE_INFINITY;
  const max = limits.max ?? Number.POSITIVE_INFINITY;
  if (low >= min && high <= max) return "meets";
  if (high < min || low > max) return "falls short";
  return "can't tell";
}

import { ImpossibleStateError, isEngineeringError } from "../errors";
import { requireRange } from "../units";

/** Coverage factor of every expanded uncertainty here: about 95 % for a near-normal result. */
export const COVERAGE_FACTOR = 2;

/** A value with its standard uncertainty in the same unit. */
export type UncertainInput = {
  readonly value: number;
  readonly standardUncertainty: number;
  /** Inputs read with the same sensor share the systematic part of its error; an instrument with several is several. */
  readonly instrumentId: string | null;
  /** The part of `standardUncertainty` that is the same in every reading of this instrument, 0 to 1. Left out: all of it. */
  readonly systematicShare?: number;
};

/** What one input adds to the uncertainty of a result. */
export type UncertaintyShare<N extends string = string> = {
  readonly input: N;
  /** Standard uncertainty of the input. */
  readonly standardUncertainty: number;
  /** Change of the result per unit of the input. */
  readonly sensitivity: number;
  /** Combined standard uncertainty that would remain if this input were exact. */
  readonly withoutIt: number;
};

export type UncertainValue<N extends string = string> = {
  readonly value: number;
  /** Combined standard uncertainty. */
  readonly standardUncertainty: number;
  /** Expanded uncertainty, k = 2. */
  readonly expandedUncertainty: number;
  /** One line an input with uncertainty. */
  readonly budget: readonly UncertaintyShare<N>[];
};

/** A correlation coefficient known for two inputs, −1 to 1. It replaces what a shared instrument would imply. */
export type Correlation<N extends string> = {
  readonly between: readonly [N, N];
  readonly coefficient: number;
};

type Values<N extends string> = Readonly<Record<N, number>>;
type Inputs<N extends string> = Readonly<Record<N, UncertainInput>>;
type Options<N extends string> = { readonly correlations?: readonly Correlation<N>[] };

/**
 * Carries the uncertainty of readings through any function to its result or results.
 *
 * Sensitivities are central differences over ± one standard uncertainty; where one side is impossible (a wet bulb
 * above its dry bulb) the other side alone is used. Shared instruments and given coefficients enter as correlations.
 *
 * @param fn - Pure function of the values; one number, or a record of numbers for several results at once.
 * @param inputs - Values with standard uncertainties, each in its own unit. Uncertainty 0 or more.
 * @param options - Known correlations.
 * @returns The value with combined and expanded (k = 2) uncertainty and its budget, per result.
 * @throws {@link OutOfRangeError} for an unreal input or result; {@link ImpossibleStateError} for correlations that contradict
 * each other; and whatever `fn` throws at the values themselves.
 * @see JCGM 100:2008, 5.1.3 note 2 (differences) and 5.2.2 (correlated inputs); example H.2 in tests (recalled).
 */
export function withUncertainty<N extends string>(
  fn: (values: Values<N>) => number,
  inputs: Inputs<N>,
  options?: Options<N>,
): UncertainValue<N>;
export function withUncertainty<N extends string, R extends string>(
  fn: (values: Values<N>) => Readonly<Record<R, number>>,
  inputs: Inputs<N>,
  options?: Options<N>,
): Readonly<Record<R, UncertainValue<N>>>;
export function withUncertainty<N extends string, R extends string>(
  fn: (values: Values<N>) => number | Readonly<Record<R, number>>,
  inputs: Inputs<N>,
  options: Options<N> = {},
): UncertainValue<N> | Readonly<Record<R, UncertainValue<N>>> {
  const names = Object.keys(inputs) as N[];
  for (const name of names) checkInput(name, inputs[name]);
  const values = Object.fromEntries(names.map((name) => [name, inputs[name].value])) as Values<N>;
  const uncertain = names.filter((name) => inputs[name].standardUncertainty > 0);
  const correlations = correlationMatrix(uncertain, inputs, options.correlations ?? []);

  const nominal = fn(values);
  const ends = uncertain.map((name) => evaluateEnds(fn, values, name, inputs[name].standardUncertainty));
  const read = (result: number | Readonly<Record<R, number>>, key: R | null): number =>
    typeof result === "number" || key === null ? (result as number) : result[key];
  const combine = (key: R | null): UncertainValue<N> => {
    const at = (result: number | Readonly<Record<R, number>>) =>
      requireRange("result", read(result, key), "", -1e300, 1e300);
    const budget = uncertain.map((input, index) => {
      const end = ends[index] ?? null;
      const slope = end === null ? 0 : (at(end.high) - at(end.low)) / end.width;
      const sensitivity = requireRange(`sensitivity to ${input}`, slope, "", -1e300, 1e300);
      return { input, sensitivity, standardUncertainty: inputs[input].standardUncertainty };
    });
    return combined(at(nominal), budget, correlations);
  };
  if (typeof nominal === "number") return combine(null);
  const keys = Object.keys(nominal) as R[];
  return Object.fromEntries(keys.map((key) => [key, combine(key)])) as Record<R, UncertainValue<N>>;
}

function checkInput(name: string, input: UncertainInput): void {
  requireRange(name, input.value, "", -1e12, 1e12);
  requireRange(`uncertainty of ${name}`, input.standardUncertainty, "", 0, 1e12);
  if (input.systematicShare !== undefined)
    requireRange(`systematic share of ${name}`, input.systematicShare, "", 0, 1);
}

/** Results one standard uncertainty below and above, or from the value to the only side that is possible. */
function evaluateEnds<N extends string, T>(
  fn: (values: Values<N>) => T,
  values: Values<N>,
  name: N,
  step: number,
): { readonly low: T; readonly high: T; readonly width: number } {
  const tryAt = (offset: number): { readonly result: T } | { readonly error: unknown } => {
    try {
      return { result: fn({ ...values, [name]: values[name] + offset }) };
    } catch (error) {
      if (isEngineeringError(error)) return { error };
      throw error;
    }
  };
  const low = tryAt(-step);
  const high = tryAt(step);
  if ("result" in low && "result" in high) return { low: low.result, high: high.result, width: 2 * step };
  if ("result" in low) return { low: low.result, high: fn(values), width: step };
  if ("result" in high) return { low: fn(values), high: high.result, width: step };
  throw low.error;
}

function correlationMatrix<N extends string>(
  names: readonly N[],
  inputs: Inputs<N>,
  given: readonly Correlation<N>[],
): readonly (readonly number[])[] {
  const known = new Map<string, number>();
  for (const { between, coefficient } of given) {
    requireRange(`correlation of ${between.join(" and ")}`, coefficient, "", -1, 1);
    if (between[0] === between[1] || !(between[0] in inputs && between[1] in inputs))
      throw new ImpossibleStateError("A correlation needs two different inputs that exist.", between);
    known.set(between.toSorted().join("\n"), coefficient);
  }
  return names.map((row) =>
    names.map((column) => {
      if (row === column) return 1;
      const coefficient = known.size === 0 ? undefined : known.get([row, column].toSorted().join("\n"));
      return coefficient ?? sharedInstrument(inputs[row], inputs[column]);
    }),
  );
}

/** Two readings of one instrument: each carries its systematic share of the same error (JCGM 100:2008, F.1.2.3). */
function sharedInstrument(a: UncertainInput, b: UncertainInput): number {
  if (a.instrumentId === null || a.instrumentId !== b.instrumentId) return 0;
  return (a.systematicShare ?? 1) * (b.systematicShare ?? 1);
}

function combined<N extends string>(
  value: number,
  budget: readonly Omit<UncertaintyShare<N>, "withoutIt">[],
  correlations: readonly (readonly number[])[],
): UncertainValue<N> {
  const parts = budget.map((share) => share.sensitivity * share.standardUncertainty);
  const standardUncertainty = rootOf(parts, correlations);
  return {
    value,
    standardUncertainty,
    expandedUncertainty: COVERAGE_FACTOR * standardUncertainty,
    budget: budget.map((share, left) => ({
      ...share,
      withoutIt: rootOf(
        parts.map((part, index) => (index === left ? 0 : part)),
        correlations,
      ),
    })),
  };
}

/** √(Σᵢ Σⱼ rᵢⱼ partᵢ partⱼ), scaled by the largest part so that squares cannot overflow. */
function rootOf(parts: readonly number[], correlations: readonly (readonly number[])[]): number {
  let largest = 0;
  for (const part of parts) largest = Math.max(largest, Math.abs(part));
  if (largest === 0) return 0;
  let variance = 0;
  let squares = 0;
  for (let row = 0; row < parts.length; row += 1) {
    const share = (parts[row] ?? 0) / largest;
    const coefficients = correlations[row];
    squares += share ** 2;
    for (let column = 0; column < parts.length; column += 1)
      variance += (coefficients?.[column] ?? 0) * share * ((parts[column] ?? 0) / largest);
  }
  if (variance < -1e-9 * squares)
    throw new ImpossibleStateError("The correlations given contradict each other.", ["correlations"]);
  return largest * Math.sqrt(Math.max(0, variance));
}

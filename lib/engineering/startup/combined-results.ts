import { COVERAGE_FACTOR, type UncertainValue } from "./with-uncertainty";

/**
 * The same value in another scale, such as a share of an expected value or with the other sign.
 *
 * @param factor - From the old unit to the new; finite, less than 0 turns the sign.
 */
export function rescaled<N extends string>(result: UncertainValue<N>, factor: number): UncertainValue<N> {
  return mapped(result, result.value * factor, factor);
}

/** Product of two results that share no instrument, first order (JCGM 100:2008, 5.1.2). */
export function product(a: UncertainValue, b: UncertainValue): UncertainValue {
  const first = rescaled(a, b.value);
  const second = rescaled(b, a.value);
  const standardUncertainty = Math.hypot(first.standardUncertainty, second.standardUncertainty);
  return {
    value: a.value * b.value,
    standardUncertainty,
    expandedUncertainty: COVERAGE_FACTOR * standardUncertainty,
    budget: [...withRest(first, second.standardUncertainty), ...withRest(second, first.standardUncertainty)],
  };
}

/** Quotient of two results that share no instrument, first order. The bottom must not be 0. */
export function quotient(top: UncertainValue, bottom: UncertainValue): UncertainValue {
  const reciprocal = mapped(bottom, 1 / bottom.value, -1 / bottom.value ** 2);
  return product(top, reciprocal);
}

function mapped<N extends string>(
  result: UncertainValue<N>,
  value: number,
  slope: number,
): UncertainValue<N> {
  const size = Math.abs(slope);
  return {
    value,
    standardUncertainty: result.standardUncertainty * size,
    expandedUncertainty: result.expandedUncertainty * size,
    budget: result.budget.map((line) => ({
      ...line,
      sensitivity: line.sensitivity * slope,
      withoutIt: line.withoutIt * size,
    })),
  };
}

function withRest(part: UncertainValue, rest: number): UncertainValue["budget"] {
  return part.budget.map((line) => ({ ...line, withoutIt: Math.hypot(line.withoutIt, rest) }));
}

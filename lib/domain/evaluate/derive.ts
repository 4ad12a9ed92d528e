import { isEngineeringError } from "@/lib/engineering/errors";
import { type Derived, known, unknown } from "./context";

type Needs = Readonly<Record<string, number | string | boolean | null>>;
type Given<N extends Needs> = { readonly [K in keyof N]: NonNullable<N[K]> };

/**
 * Computes something from inputs that may be missing. Missing ones are named; a refusal of the
 * engineering module becomes the reason; anything else is a defect and is thrown on.
 */
export function derive<const N extends Needs, T>(needs: N, compute: (given: Given<N>) => T): Derived<T> {
  const missing = Object.keys(needs).filter((key) => needs[key] === null);
  if (missing.length > 0) return unknown(missing);
  try {
    return known(compute(needs as Given<N>));
  } catch (error) {
    if (isEngineeringError(error)) return unknown([], error.message);
    throw error;
  }
}

/**
 * Computes from something derived before; passes its reasons on when it is not known. Not called `then`: a module
 * with an export of that name is taken for a promise and its dynamic import never ends.
 */
export function andThen<A, B>(from: Derived<A>, compute: (value: A) => Derived<B>): Derived<B> {
  return from.known ? compute(from.value) : from;
}

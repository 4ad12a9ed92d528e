import type { Basis } from "./findings";

/** One number a company may set: the seed value, its allowed range and what the seed rests on. */
export type LimitDefinition = {
  readonly title: string;
  readonly unit: string;
  readonly seed: number;
  readonly min: number;
  readonly max: number;
  readonly decimals: number;
  readonly basis: Basis;
};

/** The limits in force, one number a key, as given to a findings function. */
export type LimitValues<T extends Readonly<Record<string, LimitDefinition>>> = {
  readonly [K in keyof T]: number;
};

/** The seed values of a table of definitions. */
export function seedLimits<T extends Readonly<Record<string, LimitDefinition>>>(
  definitions: T,
): LimitValues<T> {
  const entries = Object.entries(definitions).map(([key, definition]) => [key, definition.seed]);
  return Object.fromEntries(entries) as LimitValues<T>;
}

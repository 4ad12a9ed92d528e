/** A physical quantity lies outside the range in which the equation, table or instrument is valid. */
export class OutOfRangeError extends Error {
  override readonly name = "OutOfRangeError";
  constructor(
    readonly quantity: string,
    readonly value: number,
    readonly unit: string,
    readonly min: number,
    readonly max: number,
  ) {
    super(`${quantity} ${value} ${unit} is outside ${min} to ${max} ${unit}`.replaceAll("  ", " ").trim());
  }
}

/** Two or more inputs contradict each other, such as a wet bulb above its dry bulb. */
export class ImpossibleStateError extends Error {
  override readonly name = "ImpossibleStateError";
  /** @param fields - The input names that contradict each other. */
  constructor(
    message: string,
    readonly fields: readonly string[],
  ) {
    super(message);
  }
}

/** A solver used up its iterations. The residual tells how far away it stopped. */
export class NotConvergedError extends Error {
  override readonly name = "NotConvergedError";
  constructor(
    readonly solver: string,
    readonly iterations: number,
    readonly residual: number,
    readonly unit: string,
  ) {
    super(`${solver} did not settle in ${iterations} steps; ${residual} ${unit} remained`);
  }
}

/** True for the errors whose text may be shown to the person who typed the numbers. */
export function isEngineeringError(
  error: unknown,
): error is OutOfRangeError | ImpossibleStateError | NotConvergedError {
  return (
    error instanceof OutOfRangeError ||
    error instanceof ImpossibleStateError ||
    error instanceof NotConvergedError
  );
}

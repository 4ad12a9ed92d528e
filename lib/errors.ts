import type { FieldProblem } from "./domain/problems";

/** Code → HTTP status: the only such table. */
export const STATUS_OF = {
  NOT_SIGNED_IN: 401,
  /** A program's token may only read. The only 403: a token is told what it may itself, and of nothing else. */
  READ_ONLY_TOKEN: 403,
  NOT_FOUND: 404,
  INVALID_INPUT: 422,
  CONFLICT: 409,
  SIGNED_RECORD: 409,
  /** A device sends what belongs to another person than the one signed in. */
  OTHER_PERSON: 409,
  /** The person left the company whose data a device holds. */
  REMOVED: 410,
  HAND_OVER_CLOSED: 410,
  TOO_LARGE: 413,
  UNSUPPORTED_FILE: 415,
  TOO_MANY_TRIES: 429,
  TOO_MANY_CALLS: 429,
  UNAVAILABLE: 503,
  UNEXPECTED: 500,
} as const;

export type ErrorCode = keyof typeof STATUS_OF;

type Extras = {
  readonly cause?: unknown;
  readonly fields?: readonly FieldProblem[];
  /** Facts the screen needs to help, such as the other person's values in a conflict. Shown to the user. */
  readonly details?: Readonly<Record<string, unknown>>;
};

/** An error whose message may be shown to the person who caused it. */
export class AppError extends Error {
  override readonly name = "AppError";
  readonly fields: readonly FieldProblem[];
  readonly details: Readonly<Record<string, unknown>>;
  constructor(
    readonly code: ErrorCode,
    publicMessage: string,
    extras: Extras = {},
  ) {
    super(publicMessage, { cause: extras.cause });
    this.fields = extras.fields ?? [];
    this.details = extras.details ?? {};
  }
}

/** The answer for an id that does not exist, belongs to another company, or is not assigned to this person. */
export function notFound(): AppError {
  return new AppError("NOT_FOUND", "There is nothing here, or it is not yours to see.");
}

/** One or more fields are wrong. */
export function invalidInput(fields: readonly FieldProblem[]): AppError {
  const first = fields[0];
  const message = first ? first.message : "Some of what was entered cannot be used.";
  return new AppError("INVALID_INPUT", message, { fields });
}

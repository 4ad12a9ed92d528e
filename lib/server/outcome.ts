import { ZodError } from "zod";
import { type FieldProblem, problemsOf } from "@/lib/domain/problems";
import { isEngineeringError } from "@/lib/engineering/errors";
import { AppError, type ErrorCode, STATUS_OF } from "@/lib/errors";

/** What an action answers: its value, or a refusal that says what to mend. */
export type Outcome<T> =
  | { readonly ok: true; readonly value: T }
  | {
      readonly ok: false;
      readonly code: ErrorCode;
      readonly message: string;
      readonly fields: readonly FieldProblem[];
      readonly details: Readonly<Record<string, unknown>>;
    };

export type Refusal = Extract<Outcome<never>, { ok: false }>;

/** Turns anything thrown into a refusal that is safe to show. An unknown error shows only `errorId`. */
export function refusalFor(error: unknown, errorId: string): Refusal {
  if (error instanceof AppError) {
    return {
      ok: false,
      code: error.code,
      message: error.message,
      fields: error.fields,
      details: error.details,
    };
  }
  if (error instanceof ZodError) {
    const fields = problemsOf(error);
    const message = fields[0]?.message ?? "Some of what was entered cannot be used.";
    return { ok: false, code: "INVALID_INPUT", message, fields, details: {} };
  }
  if (isEngineeringError(error)) {
    return { ok: false, code: "INVALID_INPUT", message: error.message, fields: [], details: {} };
  }
  return {
    ok: false,
    code: "UNEXPECTED",
    message: `Something went wrong on our side. Nothing was changed. Error ${errorId}.`,
    fields: [],
    details: { errorId },
  };
}

/** What passes by itself, and after how many seconds to ask again. */
const RETRY_AFTER_S: Readonly<Partial<Record<ErrorCode, string>>> = {
  UNAVAILABLE: "5",
  TOO_MANY_CALLS: "60",
};

/** A refusal as a route answers it; one that passes by itself says when to ask again. */
export function refusalAnswer({ code, message, fields, details }: Refusal): Response {
  const later = RETRY_AFTER_S[code];
  return Response.json(
    { code, message, fields, details },
    { status: STATUS_OF[code], headers: later === undefined ? {} : { "retry-after": later } },
  );
}

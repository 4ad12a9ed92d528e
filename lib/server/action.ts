import { headers } from "next/headers";
import type { z } from "zod";
import { currentScope } from "@/lib/auth/session";
import { may, type Permission } from "@/lib/domain/roles";
import type { TenantScope } from "@/lib/domain/scope";
import { AppError, notFound } from "@/lib/errors";
import { failureFacts } from "./failure";
import { type Outcome, refusalFor } from "./outcome";
import { log, requestIdFrom } from "./request-log";
import { refuseUnstorableText } from "./storable-text";

type Facts<S extends z.ZodType, R> = {
  readonly name: string;
  readonly permission: Permission;
  readonly schema: S;
  readonly run: (scope: TenantScope, input: z.output<S>) => Promise<R>;
};

/** The wrapped function, carrying its facts so that a test can try every action with every wrong role. */
export type Action<R> = ((input: unknown) => Promise<Outcome<R>>) & {
  readonly facts: { readonly name: string; readonly permission: Permission };
};

/**
 * Makes a server action of three facts. The order never varies:
 * sign-in → permission → parse → run → map error.
 */
export function action<S extends z.ZodType, R>(facts: Facts<S, R>): Action<R> {
  const run = async (input: unknown): Promise<Outcome<R>> => {
    const requestId = requestIdFrom((await headers()).get("x-request-id"));
    const started = performance.now();
    try {
      const scope = await currentScope();
      if (!scope)
        throw new AppError(
          "NOT_SIGNED_IN",
          "Your sign-in has ended. Sign in again; what you typed is still here.",
        );
      if (!may(scope.role, facts.permission)) throw notFound();
      refuseUnstorableText(input);
      const value = await facts.run(scope, facts.schema.parse(input));
      log().info({ requestId, action: facts.name, ms: Math.round(performance.now() - started), ok: true });
      return { ok: true, value };
    } catch (error) {
      rethrowFrameworkSignal(error);
      const refusal = refusalFor(error, requestId);
      const level = refusal.code === "UNEXPECTED" ? "error" : "info";
      const unexpected = level === "error" ? { error: failureFacts(error) } : {};
      log()[level]({
        requestId,
        action: facts.name,
        ms: Math.round(performance.now() - started),
        code: refusal.code,
        ...unexpected,
      });
      return refusal;
    }
  };
  return Object.assign(run, { facts: { name: facts.name, permission: facts.permission } });
}

/** Redirects and not-found of the framework travel as errors with a digest; they are not failures. */
function rethrowFrameworkSignal(error: unknown): void {
  if (error instanceof Error && "digest" in error && String(error.digest).startsWith("NEXT_")) throw error;
}

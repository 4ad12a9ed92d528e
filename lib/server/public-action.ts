import { headers } from "next/headers";
import type { z } from "zod";
import { clientAddress } from "@/lib/auth/client-address";
import { linkTriesExceeded } from "@/lib/auth/sign-in-limit";
import { AppError } from "@/lib/errors";
import { failureFacts } from "./failure";
import { type Outcome, refusalFor } from "./outcome";
import { log, requestIdFrom } from "./request-log";
import { refuseUnstorableText } from "./storable-text";

type Facts<S extends z.ZodType, R> = {
  readonly name: string;
  readonly schema: S;
  readonly run: (input: z.output<S>) => Promise<R>;
};

export type PublicAction<R> = ((input: unknown) => Promise<Outcome<R>>) & {
  readonly facts: { readonly name: string; readonly permission: null };
};

/** An action for someone who is not signed in and proves themselves by a secret link. Tries are counted. */
export function publicAction<S extends z.ZodType, R>(facts: Facts<S, R>): PublicAction<R> {
  const run = async (input: unknown): Promise<Outcome<R>> => {
    const given = await headers();
    const requestId = requestIdFrom(given.get("x-request-id"));
    try {
      const address = clientAddress(given.get("x-forwarded-for"));
      if (await linkTriesExceeded(address)) {
        throw new AppError("TOO_MANY_TRIES", "Too many tries. Wait fifteen minutes, then try again.");
      }
      refuseUnstorableText(input);
      const value = await facts.run(facts.schema.parse(input));
      log().info({ requestId, action: facts.name, ok: true });
      return { ok: true, value };
    } catch (error) {
      const refusal = refusalFor(error, requestId);
      if (refusal.code === "UNEXPECTED")
        log().error({ requestId, action: facts.name, error: failureFacts(error) });
      else log().info({ requestId, action: facts.name, code: refusal.code });
      return refusal;
    }
  };
  return Object.assign(run, { facts: { name: facts.name, permission: null } });
}

import type { z } from "zod";
import { clientAddress } from "@/lib/auth/client-address";
import { notFound } from "@/lib/errors";
import { failureFacts } from "./failure";
import { refusalAnswer, refusalFor } from "./outcome";
import { log, requestIdFrom } from "./request-log";

type Context = { readonly params: Promise<Record<string, string | string[] | undefined>> };

type Facts<S extends z.ZodType> = {
  readonly name: string;
  readonly schema: S;
  readonly run: (input: z.output<S>, address: string) => Promise<Response>;
};

export type PublicHandler = ((request: Request, context: Context) => Promise<Response>) & {
  readonly facts: { readonly name: string; readonly permission: null };
};

/** A route to read for somebody who is not signed in and proves themselves by a secret link. */
export function publicRoute<S extends z.ZodType>(facts: Facts<S>): PublicHandler {
  const handle = async (request: Request, context: Context): Promise<Response> => {
    const requestId = requestIdFrom(request.headers.get("x-request-id"));
    const answer = await answerTo(facts, request, context, requestId);
    answer.headers.set("x-request-id", requestId);
    log().info({ requestId, route: facts.name, status: answer.status });
    return answer;
  };
  return Object.assign(handle, { facts: { name: facts.name, permission: null } });
}

async function answerTo<S extends z.ZodType>(
  facts: Facts<S>,
  request: Request,
  context: Context,
  requestId: string,
): Promise<Response> {
  try {
    const parsed = facts.schema.safeParse(await context.params);
    if (!parsed.success) throw notFound();
    return await facts.run(parsed.data, clientAddress(request.headers.get("x-forwarded-for")));
  } catch (error) {
    const refusal = refusalFor(error, requestId);
    if (refusal.code === "UNEXPECTED")
      log().error({ requestId, route: facts.name, error: failureFacts(error) });
    return refusalAnswer(refusal);
  }
}

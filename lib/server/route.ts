import type { z } from "zod";
import { deviceScope, handOverScope } from "@/lib/auth/device";
import { currentScope } from "@/lib/auth/session";
import { may, type Permission } from "@/lib/domain/roles";
import type { TenantScope } from "@/lib/domain/scope";
import { AppError, notFound } from "@/lib/errors";
import { failureFacts } from "./failure";
import { refusalAnswer, refusalFor } from "./outcome";
import { log, requestIdFrom } from "./request-log";
import { refuseUnstorableText } from "./storable-text";

type Context = { readonly params: Promise<Record<string, string | string[] | undefined>> };

type Facts<S extends z.ZodType> = {
  readonly name: string;
  readonly permission: Permission;
  /**
   * For a door of phones: whose data the device holds is read from its headers and must be who is signed in.
   * `also who left`: the hand-over, which takes and gives nothing back.
   */
  readonly forDevice?: boolean | "also who left";
  /** Reads the address: its parameters and query, as one flat object of strings. */
  readonly schema: S;
  readonly run: (scope: TenantScope, input: z.output<S>, request: Request) => Promise<Response | object>;
};

export type Handler = ((request: Request, context: Context) => Promise<Response>) & {
  readonly facts: { readonly name: string; readonly permission: Permission };
};

/** Makes a route handler of three facts, in the same order as {@link action}. */
export function route<S extends z.ZodType>(facts: Facts<S>): Handler {
  const handle = async (request: Request, context: Context): Promise<Response> => {
    const requestId = requestIdFrom(request.headers.get("x-request-id"));
    const started = performance.now();
    const answer = await answerTo(facts, request, context, requestId);
    answer.headers.set("x-request-id", requestId);
    log().info({
      requestId,
      route: facts.name,
      status: answer.status,
      ms: Math.round(performance.now() - started),
    });
    return answer;
  };
  return Object.assign(handle, { facts: { name: facts.name, permission: facts.permission } });
}

async function answerTo<S extends z.ZodType>(
  facts: Facts<S>,
  request: Request,
  context: Context,
  requestId: string,
): Promise<Response> {
  try {
    refuseForeignOrigin(request);
    const scope = await scopeOf(facts.forDevice ?? false, request.headers);
    if (!scope) throw new AppError("NOT_SIGNED_IN", "Sign in first.");
    if (!may(scope.role, facts.permission)) throw notFound();
    const query = Object.fromEntries(new URL(request.url).searchParams);
    const parsed = facts.schema.safeParse({ ...query, ...(await context.params) });
    // An address that does not parse names nothing: same answer as an id that does not exist.
    if (!parsed.success) throw notFound();
    refuseUnstorableText(parsed.data);
    const result = await facts.run(scope, parsed.data, request);
    return result instanceof Response ? result : Response.json(result);
  } catch (error) {
    const refusal = refusalFor(error, requestId);
    if (refusal.code === "UNEXPECTED")
      log().error({ requestId, route: facts.name, error: failureFacts(error) });
    return refusalAnswer(refusal);
  }
}

function scopeOf(forDevice: Facts<z.ZodType>["forDevice"], headers: Headers): Promise<TenantScope | null> {
  if (forDevice === "also who left") return handOverScope(headers);
  return forDevice ? deviceScope(headers) : currentScope();
}

/** A browser sends `Origin` with every write; one from elsewhere is someone else's page posting here. */
function refuseForeignOrigin(request: Request): void {
  if (request.method === "GET" || request.method === "HEAD") return;
  const origin = request.headers.get("origin");
  const host = request.headers.get("x-forwarded-host") ?? request.headers.get("host");
  // A page without an origin of its own sends "null", which is no address.
  if (origin && host && (!URL.canParse(origin) || new URL(origin).host !== host)) throw notFound();
}

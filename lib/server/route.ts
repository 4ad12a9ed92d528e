import type { z } from "zod";
import { deviceScope, handOverScope } from "@/lib/auth/device";
import { currentScope } from "@/lib/auth/session";
import { may, type Permission } from "@/lib/domain/roles";
import type { TenantScope } from "@/lib/domain/scope";
import { COMPANY_HEADER } from "@/lib/domain/shown-for";
import { AppError, notFound } from "@/lib/errors";
import { answered } from "./answered";
import { takingBody } from "./large-bodies";
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
  const handle = (request: Request, context: Context) =>
    answered(facts.name, request, () => answerTo(facts, request, context));
  return Object.assign(handle, { facts: { name: facts.name, permission: facts.permission } });
}

async function answerTo<S extends z.ZodType>(
  facts: Facts<S>,
  request: Request,
  context: Context,
): Promise<Response> {
  refuseForeignOrigin(request);
  const { company, ...query } = Object.fromEntries(new URL(request.url).searchParams);
  const scope = await scopeOf(facts.forDevice ?? false, request.headers, company);
  if (!scope) throw new AppError("NOT_SIGNED_IN", "Sign in first.");
  if (!may(scope.role, facts.permission)) throw notFound();
  const parsed = facts.schema.safeParse({ ...query, ...(await context.params) });
  // An address that does not parse names nothing: same answer as an id that does not exist.
  if (!parsed.success) throw notFound();
  refuseUnstorableText(parsed.data);
  const result = await takingBody(request, scope.userId, () => facts.run(scope, parsed.data, request));
  return result instanceof Response ? result : Response.json(result);
}

/** @param company - In a link that is no request of a page's own: the company whose page it stands on. */
function scopeOf(
  forDevice: Facts<z.ZodType>["forDevice"],
  headers: Headers,
  company: string | undefined,
): Promise<TenantScope | null> {
  if (forDevice === "also who left") return handOverScope(headers);
  if (company !== undefined) return deviceScope(new Headers({ [COMPANY_HEADER]: company }));
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

import { createHash } from "node:crypto";
import type { z } from "zod";
import { type ApiCaller, apiCaller, takeApiCall } from "@/lib/auth/api-token";
import type { ApiEndpoint } from "@/lib/domain/api-endpoint";
import { isUuid } from "@/lib/domain/ids";
import { may, type Permission } from "@/lib/domain/roles";
import type { TenantScope } from "@/lib/domain/scope";
import { AppError, invalidInput, notFound } from "@/lib/errors";
import { answered } from "./answered";
import { readJson } from "./json-body";
import { takingBody } from "./large-bodies";
import { readBodyUpTo } from "./limited-body";
import { refuseUnstorableText } from "./storable-text";

/** An address without parameters has none at all. */
type Context = { readonly params: Promise<Record<string, string | string[] | undefined> | undefined> };

type BodyOf<E extends ApiEndpoint> = E["body"] extends { readonly kind: "json"; readonly schema: infer S }
  ? z.output<S & z.ZodType>
  : E["body"] extends { readonly kind: "file" }
    ? Uint8Array
    : null;

type Asked<E extends ApiEndpoint> = {
  readonly params: z.output<E["params"]>;
  readonly query: z.output<E["query"]>;
  readonly body: BodyOf<E>;
  /** The caller's own key of this sending, and the hash of all that was sent; empty where none is asked for. */
  readonly sending: { readonly key: string; readonly requestHash: string };
};

export type ApiHandler = ((request: Request, context: Context) => Promise<Response>) & {
  readonly facts: { readonly name: string; readonly permission: Permission; readonly endpoint: ApiEndpoint };
};

/**
 * Makes a route for programs: token → how often → may → parse → run → map error. A cookie opens nothing here, and a token
 * nothing elsewhere. What the endpoint does not declare does not leave.
 */
export function apiRoute<E extends ApiEndpoint>(
  endpoint: E,
  run: (scope: TenantScope, asked: Asked<E>) => Promise<z.input<E["answer"]>>,
): ApiHandler {
  const handle = async (request: Request, context: Context) => {
    const answer = await answered(endpoint.name, request, async () => {
      const { scope } = await callerOf(endpoint, request.headers);
      const work = async () => run(scope, await parsed(endpoint, request, context));
      // JSON is bounded where its shape is declared; only a file is large.
      const said =
        endpoint.body.kind === "file" ? await takingBody(request, scope.userId, work) : await work();
      const body = JSON.stringify(endpoint.answer.parse(said));
      return endpoint.method === "GET" ? tagged(body, request) : jsonAnswer(body, endpoint.status);
    });
    answer.headers.set("cache-control", "no-store");
    if (answer.status === 401) answer.headers.set("www-authenticate", "Bearer");
    return answer;
  };
  return Object.assign(handle, {
    facts: { name: endpoint.name, permission: endpoint.permission, endpoint },
  });
}

/** What stands at every address of the API that is none. */
export async function noSuchCall(request: Request): Promise<Response> {
  const answer = await answered("api, no such call", request, () =>
    Promise.reject(
      new AppError("NOT_FOUND", "No call of the API stands at this address. /api-reference lists them all."),
    ),
  );
  answer.headers.set("cache-control", "no-store");
  return answer;
}

async function callerOf(endpoint: ApiEndpoint, headers: Headers): Promise<ApiCaller> {
  const caller = await apiCaller(headers);
  if (caller === null) {
    throw new AppError(
      "NOT_SIGNED_IN",
      "This needs a token that works, as “Authorization: Bearer …”. An owner makes one under Company → API tokens.",
    );
  }
  if (!(await takeApiCall(caller.tokenId)))
    throw new AppError("TOO_MANY_CALLS", "Too many calls with this token. Wait a minute, then go on.");
  if (endpoint.access === "write" && caller.access !== "write") {
    throw new AppError(
      "READ_ONLY_TOKEN",
      "This token may read only. Make one that may also add callbacks and logs.",
    );
  }
  if (!may(caller.scope.role, endpoint.permission)) throw notFound();
  return caller;
}

async function parsed<E extends ApiEndpoint>(
  endpoint: E,
  request: Request,
  context: Context,
): Promise<Asked<E>> {
  // An address that does not parse names nothing: same answer as an id that does not exist.
  const params = endpoint.params.safeParse({ ...(await context.params) });
  if (!params.success) throw notFound();
  const url = new URL(request.url);
  const query = endpoint.query.strict().parse(Object.fromEntries(url.searchParams));
  refuseUnstorableText(query);
  const key = endpoint.keyed ? keyOf(request.headers) : "";
  const [body, bytes] = await bodyOf(endpoint, request);
  const requestHash = createHash("sha256")
    .update(`${endpoint.name}\n${JSON.stringify([params.data, query])}\n`)
    .update(bytes)
    .digest("hex");
  return { params: params.data, query, body, sending: { key, requestHash } } as Asked<E>;
}

function keyOf(headers: Headers): string {
  const key = headers.get("idempotency-key") ?? "";
  if (isUuid(key)) return key.toLowerCase();
  throw invalidInput([
    {
      field: "Idempotency-Key",
      message:
        "Idempotency-Key: send a UUID made for this sending; send the same one again when you repeat it.",
    },
  ]);
}

async function bodyOf(
  { body }: ApiEndpoint,
  request: Request,
): Promise<readonly [body: unknown, bytes: Uint8Array | string]> {
  if (body.kind === "none") return [null, ""];
  if (body.kind === "json") {
    const damaged = "body: send JSON; what arrived is none.";
    const read = body.schema.parse(await readJson(request, body.mostBytes, "body", damaged));
    return [read, JSON.stringify(read)];
  }
  const mostMb = Math.floor(body.mostBytes / 1_000_000);
  const message = `body: the file is larger than ${mostMb} MB. Split it, for instance by month.`;
  const bytes = await readBodyUpTo(request, body.mostBytes, { field: "body", message });
  if (bytes.byteLength === 0)
    throw invalidInput([{ field: "body", message: "body: send the file's bytes; nothing arrived." }]);
  return [bytes, bytes];
}

/** A reader that has this answer already is told so, without it. */
function tagged(body: string, request: Request): Response {
  const tag = `"${createHash("sha256").update(body).digest("base64url").slice(0, 27)}"`;
  const has = (request.headers.get("if-none-match") ?? "")
    .split(",")
    .map((one) => one.trim().replace(/^W\//, ""));
  if (has.includes(tag)) return new Response(null, { status: 304, headers: { etag: tag } });
  const answer = jsonAnswer(body, 200);
  answer.headers.set("etag", tag);
  return answer;
}

function jsonAnswer(body: string, status: number): Response {
  return new Response(body, { status, headers: { "content-type": "application/json" } });
}

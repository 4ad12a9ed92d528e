import type { ApiEndpoint } from "@/lib/domain/api-endpoint";
import type { WebhookEvent } from "@/lib/domain/webhooks";
import { API_BASE } from ".";
import { eventBody } from "./events";
import { type JsonSchema, jsonSchema, parametersOf } from "./openapi";

/** One thing that goes in or comes out, as a person reads it. */
export type ReferenceRow = {
  /** Where it stands: `jobs[].verdict`. */
  readonly name: string;
  readonly type: string;
  readonly required: boolean;
  readonly words: string;
};

export type EndpointReference = {
  readonly id: string;
  readonly asked: readonly ReferenceRow[];
  readonly body: readonly ReferenceRow[];
  readonly answer: readonly ReferenceRow[];
  readonly curl: string;
};

/** What an endpoint takes and answers, line by line, and how to call it. */
export function endpointReference(endpoint: ApiEndpoint, server: string): EndpointReference {
  const { body, answer } = endpoint;
  return {
    id: endpoint.name.replaceAll(" ", "-"),
    asked: parametersOf(endpoint).map(({ name, required, description, schema }) => ({
      name,
      required,
      type: typeOf(schema),
      words: description ?? "",
    })),
    body: body.kind === "json" ? rowsOf(jsonSchema(body.schema, "input"), "") : [],
    answer: rowsOf(jsonSchema(answer, "output"), ""),
    curl: curlOf(endpoint, server),
  };
}

/** What an event tells, line by line. */
export function eventReference(event: WebhookEvent): readonly ReferenceRow[] {
  return rowsOf(jsonSchema(eventBody(event), "output"), "");
}

function rowsOf(schema: JsonSchema, prefix: string): readonly ReferenceRow[] {
  const required = (schema.required ?? []) as readonly string[];
  return Object.entries((schema.properties ?? {}) as Readonly<Record<string, JsonSchema>>).flatMap(
    ([key, field]) => {
      const name = prefix + key;
      const words = typeof field.description === "string" ? field.description : "";
      const own = { name, type: typeOf(field), required: required.includes(key), words };
      return [own, ...partsOf(field, name)];
    },
  );
}

/** What stands inside a field: a list's things, an object's parts, a map's values. */
function partsOf(field: JsonSchema, name: string): readonly ReferenceRow[] {
  const alternatives = (field.anyOf ?? []) as readonly JsonSchema[];
  const found = [field, ...alternatives];
  return found.flatMap((one) => [
    ...(isSchema(one.items) ? rowsOf(one.items, `${name}[].`) : []),
    ...(isSchema(one.properties) ? rowsOf(one, `${name}.`) : []),
    ...(isSchema(one.additionalProperties) ? rowsOf(one.additionalProperties, `${name}.*.`) : []),
  ]);
}

/** A type in words: `text, a UUID`, `one of meets, falls short`, `list`. */
function typeOf(schema: JsonSchema): string {
  if (Array.isArray(schema.anyOf)) {
    const all = (schema.anyOf as readonly JsonSchema[]).map(typeOf);
    return all.join(" or ");
  }
  if (Array.isArray(schema.type))
    return (schema.type as readonly string[]).map((type) => typeOf({ ...schema, type })).join(" or ");
  if (typeof schema.const === "string") return `“${schema.const}”`;
  if (Array.isArray(schema.enum)) return `one of ${schema.enum.join(", ")}`;
  const format = typeof schema.format === "string" ? FORMATS[schema.format] : undefined;
  return format ?? TYPES[String(schema.type)] ?? String(schema.type ?? "anything");
}

const FORMATS: Readonly<Record<string, string>> = {
  uuid: "UUID",
  date: "day, 2026-07-31",
  "date-time": "instant, 2026-07-31T14:05:00.000Z",
};
const TYPES: Readonly<Record<string, string>> = {
  string: "text",
  integer: "whole number",
  number: "number",
  boolean: "true or false",
  array: "list",
  object: "object",
  null: "null",
};

function isSchema(value: unknown): value is JsonSchema {
  return typeof value === "object" && value !== null;
}

/** A call to paste into a shell that has the token in `DEWLEDGER_TOKEN` and the ids in variables. */
function curlOf({ method, path, body, keyed, query }: ApiEndpoint, server: string): string {
  const address = `${server}${API_BASE}${path.replaceAll(/\{(\w+)\}/g, (_, name: string) => `$${inCapitals(name)}`)}`;
  const asked = Object.entries(EXAMPLES).filter(([name]) => name in query.shape);
  const tail = asked.length === 0 ? "" : `?${new URLSearchParams(asked)}`;
  return [
    `curl ${method === "GET" ? "" : `-X ${method} `}"${address}${tail}"`,
    `-H "Authorization: Bearer $DEWLEDGER_TOKEN"`,
    ...(keyed ? ['-H "Idempotency-Key: $(uuidgen)"'] : []),
    ...(body.kind === "json" ? [`-H "Content-Type: application/json" -d '${BODY}'`] : []),
    ...(body.kind === "file" ? ["--data-binary @log.csv"] : []),
  ].join(" \\\n  ");
}

const EXAMPLES = { limit: "20", sourceName: "hall sensor" } as const;
const BODY =
  '{"jobId": "\'$JOB_ID\'", "kind": "too_humid", "reportedOn": "2026-07-31", "complaint": "Sticky in the evening"}';

const inCapitals = (name: string) => name.replaceAll(/[A-Z]/g, (letter) => `_${letter}`).toUpperCase();

import { z } from "zod";
import type { ApiEndpoint } from "@/lib/domain/api-endpoint";
import { API_ACCESS } from "@/lib/domain/api-tokens";
import { WEBHOOK_EVENT_KEYS, WEBHOOK_EVENTS, type WebhookEvent } from "@/lib/domain/webhooks";
import { API_BASE, API_ENDPOINTS } from ".";
import { eventBody } from "./events";
import { apiError } from "./parts";

/** As much of JSON Schema as is read here. */
export type JsonSchema = Readonly<Record<string, unknown>>;

/** The parameters of an endpoint in its address and after it. */
export type Parameter = {
  readonly name: string;
  readonly in: "path" | "query" | "header";
  readonly required: boolean;
  readonly description?: string;
  readonly schema: JsonSchema;
};

/** A schema as JSON Schema, as it comes in or as it goes out. */
export function jsonSchema(schema: z.ZodType, io: "input" | "output"): JsonSchema {
  const { $schema: _, ...rest } = z.toJSONSchema(schema, { io, unrepresentable: "any" });
  return rest;
}

export function parametersOf({ params, query, keyed }: ApiEndpoint): readonly Parameter[] {
  const key: Parameter = {
    name: "Idempotency-Key",
    in: "header",
    required: true,
    description:
      "A UUID made for this sending. Send the same one when it is repeated: nothing is done twice.",
    schema: { type: "string", format: "uuid" },
  };
  return [...parametersIn(params, "path"), ...parametersIn(query, "query"), ...(keyed ? [key] : [])];
}

function parametersIn(fields: z.ZodObject, place: "path" | "query"): readonly Parameter[] {
  return Object.entries(fields.shape).map(([name, field]) => {
    // As it is after reading, because a number in an address is text before.
    const { description, ...schema } = jsonSchema(field as z.ZodType, "output");
    return {
      name,
      in: place,
      required: !(field as z.ZodType).safeParse(undefined).success,
      ...(typeof description === "string" ? { description } : {}),
      schema,
    };
  });
}

/** The description of the API that programs read, made of what its doors are made of. */
export function openApiDocument(server: string) {
  const paths: Record<string, Record<string, unknown>> = {};
  for (const endpoint of API_ENDPOINTS) {
    paths[endpoint.path] = {
      ...paths[endpoint.path],
      [endpoint.method.toLowerCase()]: operation(endpoint),
    };
  }
  return {
    openapi: "3.1.0",
    info: {
      title: "Dewledger API",
      version: "1",
      description:
        "What a company's own programs may read and add. Within version 1 fields are added, never renamed or taken away; a caller ignores what it does not know.",
    },
    servers: [{ url: `${server}${API_BASE}` }],
    security: [{ token: [] }],
    paths,
    webhooks: Object.fromEntries(WEBHOOK_EVENT_KEYS.map((event) => [event, { post: delivery(event) }])),
    components: {
      securitySchemes: {
        token: {
          type: "http",
          scheme: "bearer",
          description: "Made by an owner under Company → API tokens.",
        },
      },
      schemas: { Error: jsonSchema(apiError, "output") },
      responses: Object.fromEntries(
        Object.entries(REFUSALS).map(([status, description]) => [
          `Refused${status}`,
          { description, content: json({ $ref: "#/components/schemas/Error" }) },
        ]),
      ),
    },
  };
}

/** Every status of a refusal, and when it is answered. */
export const REFUSALS: Readonly<Record<string, string>> = {
  "401": "The token is missing, wrong, revoked or expired, or who made it is no owner any more.",
  "403": "The token may read only.",
  "404": "Nothing of this company is there.",
  "409": "It does not fit what is there, or the key was used for something else.",
  "413": "The body is too large.",
  "422": "A field is wrong; each is named with the fix.",
  "429": "Too many calls; go on after the seconds in Retry-After.",
  "503": "Too much is being saved at once; nothing was changed. Go on after the seconds in Retry-After.",
};

function operation(endpoint: ApiEndpoint) {
  const { name, summary, description, access, body, status, answer, method } = endpoint;
  const statuses = ["401", "422", "429", "503"];
  if (endpoint.path.includes("{") || access === "write") statuses.push("404");
  if (access === "write") statuses.push("403", "409", "413");
  return {
    operationId: name.replace(/^api /, "").replaceAll(/ (.)/g, (_, letter: string) => letter.toUpperCase()),
    summary,
    description: `${description} The token may: ${API_ACCESS[access].label.toLowerCase()}.`,
    parameters: parametersOf(endpoint),
    ...(body.kind === "none" ? {} : { requestBody: { required: true, ...requestBody(body) } }),
    responses: {
      [status]: { description: "Done", content: json(jsonSchema(answer, "output")) },
      ...(method === "GET"
        ? { "304": { description: "Not changed since the `ETag` in `If-None-Match`." } }
        : {}),
      ...Object.fromEntries(
        statuses.toSorted().map((one) => [one, { $ref: `#/components/responses/Refused${one}` }]),
      ),
    },
  };
}

/** What a listener is sent, as OpenAPI says it. */
function delivery(event: WebhookEvent) {
  return {
    summary: WEBHOOK_EVENTS[event],
    security: [],
    parameters: [
      {
        name: "Dewledger-Signature",
        in: "header",
        required: true,
        description:
          "`signed-at=…; sha256=…`: the time in seconds, and the HMAC-SHA-256 over time, a dot and the body, in hex, with the webhook's secret.",
        schema: { type: "string" },
      },
    ],
    requestBody: { required: true, content: json(jsonSchema(eventBody(event), "output")) },
    responses: { "2XX": { description: "Taken. Anything else, and a redirect too, is tried again." } },
  };
}

function requestBody(body: Exclude<ApiEndpoint["body"], { kind: "none" }>) {
  return body.kind === "json"
    ? { content: json(jsonSchema(body.schema, "input")) }
    : { description: body.what, content: { "application/octet-stream": {} } };
}

const json = (schema: JsonSchema) => ({ "application/json": { schema } });

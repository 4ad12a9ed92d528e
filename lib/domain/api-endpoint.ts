import type { z } from "zod";
import type { ApiAccess } from "./api-tokens";
import type { Permission } from "./roles";

/** What a caller sends beside the address: nothing, JSON of a shape, or a file's bytes as they are. */
export type ApiBody =
  | { readonly kind: "none" }
  | { readonly kind: "json"; readonly schema: z.ZodType; readonly mostBytes: number }
  | { readonly kind: "file"; readonly mostBytes: number; readonly what: string };

/**
 * One door of the API, declared once: the wrapper checks what comes in and goes out with it, and the description that
 * programs and people read is made of it.
 */
export type ApiEndpoint = {
  /** Names the door in logs, tests and the description. */
  readonly name: string;
  readonly method: "GET" | "POST";
  /** With parameters in braces: `/jobs/{jobId}/ledger`. */
  readonly path: string;
  readonly summary: string;
  readonly description: string;
  readonly access: ApiAccess;
  readonly permission: Permission;
  readonly params: z.ZodObject;
  readonly query: z.ZodObject;
  readonly body: ApiBody;
  /** True where a caller names each sending with a key of its own, so that a repeat does nothing twice. */
  readonly keyed: boolean;
  readonly status: 200 | 201 | 202;
  readonly answer: z.ZodObject;
};

/** What is left out of an endpoint that only reads. */
export const READS = {
  method: "GET",
  access: "read",
  body: { kind: "none" },
  keyed: false,
  status: 200,
} as const satisfies Partial<ApiEndpoint>;

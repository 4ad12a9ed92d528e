import type { z } from "zod";
import { clientAddress } from "@/lib/auth/client-address";
import { notFound } from "@/lib/errors";
import { answered } from "./answered";

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
  const handle = (request: Request, context: Context) =>
    answered(facts.name, request, async () => {
      const parsed = facts.schema.safeParse(await context.params);
      if (!parsed.success) throw notFound();
      return facts.run(parsed.data, clientAddress(request.headers.get("x-forwarded-for")));
    });
  return Object.assign(handle, { facts: { name: facts.name, permission: null } });
}

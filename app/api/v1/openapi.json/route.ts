import { env } from "@/lib/env";
import { openApiDocument } from "@/lib/schemas/api/openapi";

// The address stands in it, which only a running server knows.
export const dynamic = "force-dynamic";

/** The description of the API, the same for everybody. */
export function GET(): Response {
  return Response.json(openApiDocument(env().NEXTAUTH_URL), {
    headers: { "cache-control": "public, max-age=300" },
  });
}

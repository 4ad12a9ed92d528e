import { z } from "zod";
import { route } from "@/lib/server/route";
import { fieldBundle } from "@/lib/services/field-bundle";

/** What a phone carries into the attic. An unchanged bundle is answered by its tag alone. */
export const GET = route({
  name: "read field bundle",
  permission: "startup.fill",
  forDevice: true,
  schema: z.object({}),
  run: async (scope, _input, request) => {
    const { etag, bundle } = await fieldBundle(scope, request.headers.get("if-none-match"));
    const headers = { etag, "cache-control": "private, no-cache", vary: "cookie" };
    return bundle === null
      ? new Response(null, { status: 304, headers })
      : Response.json(bundle, { headers });
  },
});

import { z } from "zod";
import { brandSchema } from "@/lib/schemas/brand";
import { readBodyUpTo } from "@/lib/server/limited-body";
import { route } from "@/lib/server/route";
import { previewBrand } from "@/lib/services/brand-preview";

const MAX_BYTES = 64 * 1024;
const TOO_LARGE = { field: "coverWords", message: "This is too much text for a brand. Shorten it." };

/** A packet with invented figures, in the brand as it is being typed. Nothing is kept. */
export const POST = route({
  name: "preview brand",
  permission: "brand.edit",
  schema: z.object({}),
  run: async (scope, _input, request) => {
    const body = await readBodyUpTo(request, MAX_BYTES, TOO_LARGE);
    const bytes = await previewBrand(scope, brandSchema.parse(parsed(body)));
    return new Response(Buffer.from(bytes), {
      headers: { "content-type": "application/pdf", "cache-control": "private, no-store" },
    });
  },
});

/** What is no JSON is an empty form: the schema names what is missing. */
function parsed(body: Uint8Array): unknown {
  try {
    return JSON.parse(new TextDecoder().decode(body));
  } catch {
    return {};
  }
}

import { revalidatePath } from "next/cache";
import { z } from "zod";
import { readBodyUpTo } from "@/lib/server/limited-body";
import { route } from "@/lib/server/route";
import { readLogo, saveLogo } from "@/lib/services/brand";

const MAX_BYTES = 2 * 1024 * 1024;
const TOO_LARGE = {
  field: "logo",
  message: "This logo is larger than 2 MB. Send a PNG, JPEG, WebP or plain SVG of at most 2 MB.",
};

/** The company's logo, for every member. `v` changes with the picture, so a browser may keep it. */
export const GET = route({
  name: "read logo",
  permission: "job.read",
  schema: z.object({ v: z.string().optional() }),
  run: async (scope) => {
    const { bytes, mime } = await readLogo(scope);
    return new Response(Buffer.from(bytes), {
      headers: {
        "content-type": mime,
        "content-length": String(bytes.byteLength),
        "cache-control": "private, max-age=86400",
        vary: "cookie",
      },
    });
  },
});

/** Takes a picture as the body of the request and keeps a cleaned copy of it. */
export const POST = route({
  name: "save logo",
  permission: "brand.edit",
  schema: z.object({}),
  run: async (scope, _input, request) => {
    await saveLogo(scope, await readBodyUpTo(request, MAX_BYTES, TOO_LARGE));
    revalidatePath("/", "layout");
    return { saved: true };
  },
});

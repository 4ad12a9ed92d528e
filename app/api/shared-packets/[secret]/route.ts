import { z } from "zod";
import { publicRoute } from "@/lib/server/public-route";
import { readLinkedPacket } from "@/lib/services/packet-links";

/** The file behind a private link, for whoever holds the link. */
export const GET = publicRoute({
  name: "read shared packet",
  schema: z.object({ secret: z.string() }),
  run: async ({ secret }, address) => {
    const { bytes, fileName } = await readLinkedPacket(secret, address);
    return new Response(Buffer.from(bytes), {
      headers: {
        "content-type": "application/pdf",
        "content-disposition": `inline; filename="${fileName}"`,
        "cache-control": "private, no-store",
        "referrer-policy": "no-referrer",
        "x-robots-tag": "noindex",
      },
    });
  },
});

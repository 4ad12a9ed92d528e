import { z } from "zod";
import { route } from "@/lib/server/route";
import { readPacket } from "@/lib/services/packets";

/** A packet as it was made, to look at or keep. */
export const GET = route({
  name: "read packet",
  permission: "packet.make",
  schema: z.object({ jobId: z.uuid(), packetId: z.uuid() }),
  run: async (scope, { jobId, packetId }) => {
    const { bytes, fileName } = await readPacket(scope, jobId, packetId);
    return new Response(Buffer.from(bytes), {
      headers: {
        "content-type": "application/pdf",
        "content-disposition": `inline; filename="${fileName}"`,
        "cache-control": "private, no-store",
      },
    });
  },
});

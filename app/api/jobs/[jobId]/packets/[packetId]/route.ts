import { z } from "zod";
import { route } from "@/lib/server/route";
import { readReplacedPacket } from "@/lib/services/check-packet";
import { readPacket } from "@/lib/services/packets";

/** A packet as it was made, to look at or keep; a replaced one also as a copy that says so on every page. */
export const GET = route({
  name: "read packet",
  permission: "packet.make",
  schema: z.object({ jobId: z.uuid(), packetId: z.uuid(), as: z.enum(["file", "replaced"]).optional() }),
  run: async (scope, { jobId, packetId, as }) => {
    const { bytes, fileName } =
      as === "replaced"
        ? await readReplacedPacket(scope, { jobId, packetId })
        : await readPacket(scope, jobId, packetId);
    return new Response(Buffer.from(bytes), {
      headers: {
        "content-type": "application/pdf",
        "content-disposition": `${as === "file" ? "attachment" : "inline"}; filename="${fileName}"`,
        "cache-control": "private, no-store",
      },
    });
  },
});

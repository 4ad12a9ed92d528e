import { z } from "zod";
import { route } from "@/lib/server/route";
import { takeExport } from "@/lib/services/company-export";

/** The archive of everything a company has. */
export const GET = route({
  name: "download export",
  permission: "company.export",
  schema: z.object({ exportId: z.uuid() }),
  run: async (scope, { exportId }) => {
    const { fileName, size, stream } = await takeExport(scope, exportId);
    return new Response(stream, {
      headers: {
        "content-type": "application/zip",
        "content-length": String(size),
        "content-disposition": `attachment; filename="${fileName}"`,
        "cache-control": "no-store",
      },
    });
  },
});

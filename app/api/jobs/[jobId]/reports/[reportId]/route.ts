import { z } from "zod";
import { route } from "@/lib/server/route";
import { readReport, removeReport } from "@/lib/services/design-reports";

const ids = z.object({ jobId: z.uuid(), reportId: z.uuid() });

/** A report as it came. Always a download: it is somebody else's file. */
export const GET = route({
  name: "read report",
  permission: "job.read",
  schema: ids,
  run: async (scope, { jobId, reportId }) => {
    const { bytes, mime, fileName } = await readReport(scope, jobId, reportId);
    return new Response(Buffer.from(bytes), {
      headers: {
        "content-type": mime,
        "content-length": String(bytes.byteLength),
        "content-disposition": `attachment; filename="report.pdf"; filename*=UTF-8''${encodeURIComponent(fileName)}`,
        "cache-control": "private, no-store",
      },
    });
  },
});

/** Takes a report out of sight. Safe to repeat only while it is there: after that there is nothing of this name. */
export const DELETE = route({
  name: "remove report",
  permission: "design.edit",
  schema: ids,
  run: async (scope, { jobId, reportId }) => {
    await removeReport(scope, jobId, reportId);
    return { removed: true };
  },
});

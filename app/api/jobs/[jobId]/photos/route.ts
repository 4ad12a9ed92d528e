import { z } from "zod";
import { route } from "@/lib/server/route";
import { listFiles } from "@/lib/services/attachments";

/** What pictures and reports a job has; their bytes have addresses of their own. */
export const GET = route({
  name: "list photos",
  permission: "job.read",
  schema: z.object({ jobId: z.uuid() }),
  run: async (scope, { jobId }) => ({ photos: await listFiles(scope, jobId) }),
});

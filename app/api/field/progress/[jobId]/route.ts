import { z } from "zod";
import { progressAnswer } from "@/app/api/progress-answer";
import { route } from "@/lib/server/route";
import { progressOfJob } from "@/lib/services/progress";

/** How far one job's startup is. */
export const GET = route({
  name: "watch startup",
  permission: "job.assign",
  schema: z.object({ jobId: z.uuid() }),
  run: async (scope, { jobId }, request) => progressAnswer(request, [await progressOfJob(scope, jobId)]),
});

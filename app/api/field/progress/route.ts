import { z } from "zod";
import { progressAnswer } from "@/app/api/progress-answer";
import { route } from "@/lib/server/route";
import { startupsToday } from "@/lib/services/progress";

/** Today's startups, asked again and again by the page that shows them. */
export const GET = route({
  name: "watch startups",
  permission: "job.assign",
  schema: z.object({}),
  run: async (scope, _input, request) => progressAnswer(request, (await startupsToday(scope)).startups),
});

import { z } from "zod";
import { answerQuestionSchema } from "@/lib/schemas/field";
import { readJson } from "@/lib/server/json-body";
import { route } from "@/lib/server/route";
import { answerQuestion } from "@/lib/services/questions";

/** Takes the answer to a question of the office. Safe to repeat. */
export const PUT = route({
  name: "answer question",
  permission: "startup.fill",
  forDevice: true,
  schema: z.object({ jobId: z.uuid(), questionId: z.uuid() }),
  run: async (scope, ids, request) =>
    answerQuestion(scope, {
      ...ids,
      ...answerQuestionSchema.parse(await readJson(request, 20_000, "answer")),
    }),
});

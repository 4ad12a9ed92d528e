import { fieldContacts } from "@/lib/db/field-contacts";
import { questions } from "@/lib/db/questions";
import type { FieldQuestion } from "@/lib/domain/field-bundle";
import { asId } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import { STAGE_FIELDS } from "@/lib/domain/stages";
import { invalidInput } from "@/lib/errors";
import type { AnswerQuestionInput, AskQuestionInput } from "@/lib/schemas/field";
import { getJob } from "./jobs";

/** Asks the crew about a job or one reading of its startup. It reaches the phone at its next contact. */
export async function askQuestion(scope: TenantScope, input: AskQuestionInput): Promise<void> {
  const job = await getJob(scope, input.jobId);
  if (input.fieldPath !== null && !Object.hasOwn(STAGE_FIELDS.startup_record, input.fieldPath)) {
    throw invalidInput([{ field: "fieldPath", message: "Choose a reading from the list." }]);
  }
  await questions(scope).ask({
    jobId: job.id,
    stage: input.fieldPath === null ? null : "startup_record",
    fieldPath: input.fieldPath,
    text: input.text,
  });
}

/** Keeps the crew's answer. Safe to repeat. */
export async function answerQuestion(
  scope: TenantScope,
  input: AnswerQuestionInput & { readonly jobId: string; readonly questionId: string },
): Promise<FieldQuestion> {
  const { jobId, questionId, clientId, answer } = input;
  const answered = await questions(scope).answer({ jobId, questionId, clientId, answer });
  await fieldContacts(scope).note([asId<"job">(jobId)]);
  return answered;
}

export async function closeQuestion(
  scope: TenantScope,
  input: { readonly jobId: string; readonly questionId: string },
): Promise<void> {
  await questions(scope).close(input.jobId, input.questionId);
}

import type { FieldQuestion } from "@/lib/domain/field-bundle";
import type { TenantScope } from "@/lib/domain/scope";
import type { StageKey } from "@/lib/domain/stages";
import { AppError, notFound } from "@/lib/errors";
import { appendActivity } from "./activity";
import type { Prisma } from "./generated/client";
import { visibleJobs } from "./visibility";
import { withTenant } from "./with-tenant";

const FIELDS = {
  id: true,
  jobId: true,
  stage: true,
  fieldPath: true,
  text: true,
  createdAt: true,
  answer: true,
  answeredAt: true,
  closedAt: true,
  createdByMember: { select: { name: true } },
  answeredByMember: { select: { name: true } },
} as const satisfies Prisma.QuestionSelect;

export function questions(scope: TenantScope) {
  const own = { tenantId: scope.tenantId };
  return {
    /** Questions about these jobs that the office has not closed, oldest first. */
    open: (jobIds: readonly string[]): Promise<readonly FieldQuestion[]> =>
      withTenant(scope, async (tx) => {
        const rows = await tx.question.findMany({
          where: { ...own, jobId: { in: [...jobIds] }, closedAt: null, job: visibleJobs(scope) },
          orderBy: { createdAt: "asc" },
          select: FIELDS,
        });
        return rows.map(toQuestion);
      }),

    ask: (question: {
      readonly jobId: string;
      readonly stage: StageKey | null;
      readonly fieldPath: string | null;
      readonly text: string;
    }): Promise<string> =>
      withTenant(scope, async (tx) => {
        const job = await tx.job.findFirst({
          where: { AND: [visibleJobs(scope), { id: question.jobId }] },
          select: { id: true },
        });
        if (!job) throw notFound();
        const row = await tx.question.create({
          data: { ...own, ...question, createdBy: scope.userId, updatedBy: scope.userId },
          select: { id: true },
        });
        await appendActivity(tx, scope, {
          action: "question asked",
          entity: "question",
          entityId: row.id,
          jobId: question.jobId,
          after: { text: question.text, field: question.fieldPath },
        });
        return row.id;
      }),

    /**
     * Keeps an answer once. The same answer again is no change; a person may better their own answer until
     * the office closes the question; somebody else's answer is not overwritten but shown.
     */
    answer: (given: {
      readonly jobId: string;
      readonly questionId: string;
      readonly clientId: string;
      readonly answer: string;
    }): Promise<FieldQuestion> =>
      withTenant(scope, async (tx) => {
        const where = { ...own, id: given.questionId, jobId: given.jobId, job: visibleJobs(scope) };
        const seen = await tx.question.findFirst({ where, select: { id: true } });
        if (!seen) throw notFound();
        await tx.$queryRaw`SELECT 1 FROM question WHERE tenant_id = ${scope.tenantId}::uuid AND id = ${given.questionId}::uuid FOR UPDATE`;
        const before = await tx.question.findFirstOrThrow({
          where,
          select: { ...FIELDS, clientId: true, answeredBy: true },
        });
        if (before.clientId === given.clientId || before.answer === given.answer) return toQuestion(before);
        if (before.closedAt !== null || (before.answer !== null && before.answeredBy !== scope.userId)) {
          throw new AppError(
            "CONFLICT",
            before.closedAt === null
              ? `${before.answeredByMember?.name ?? "Someone"} has answered this already.`
              : "The office has closed this question.",
            { details: { theirs: before.answer, mine: given.answer } },
          );
        }
        const row = await tx.question.update({
          where: { tenantId_id: { tenantId: scope.tenantId, id: given.questionId } },
          data: {
            answer: given.answer,
            clientId: given.clientId,
            answeredBy: scope.userId,
            answeredAt: new Date(),
            updatedBy: scope.userId,
            version: { increment: 1 },
          },
          select: FIELDS,
        });
        await appendActivity(tx, scope, {
          action: "question answered",
          entity: "question",
          entityId: given.questionId,
          jobId: given.jobId,
          before: { answer: before.answer },
          after: { answer: given.answer },
        });
        return toQuestion(row);
      }),

    /** Takes a question off the list and off the phones. */
    close: (jobId: string, questionId: string): Promise<void> =>
      withTenant(scope, async (tx) => {
        const changed = await tx.question.updateMany({
          where: { ...own, id: questionId, jobId, closedAt: null, job: visibleJobs(scope) },
          data: { closedAt: new Date(), updatedBy: scope.userId, version: { increment: 1 } },
        });
        if (changed.count === 0) throw notFound();
        await appendActivity(tx, scope, {
          action: "question closed",
          entity: "question",
          entityId: questionId,
          jobId,
        });
      }),
  };
}

type Row = Prisma.QuestionGetPayload<{ select: typeof FIELDS }>;

function toQuestion(row: Row): FieldQuestion {
  return {
    id: row.id,
    jobId: row.jobId,
    stage: row.stage as StageKey | null,
    fieldPath: row.fieldPath,
    text: row.text,
    askedByName: row.createdByMember.name,
    askedAt: row.createdAt.toISOString(),
    answer: row.answer,
    answeredByName: row.answeredByMember?.name ?? null,
    answeredAt: row.answeredAt?.toISOString() ?? null,
  };
}

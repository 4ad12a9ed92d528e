import type { JobId } from "@/lib/domain/ids";
import { JOB_COLUMNS, type JobColumn } from "@/lib/domain/job-table";
import type { JobSummary } from "@/lib/domain/jobs";
import type { TenantScope } from "@/lib/domain/scope";
import type { StageKey } from "@/lib/domain/stages";
import type { Verdict } from "@/lib/engineering/findings";
import { SUMMARY, toSummary } from "./job-summary";
import { asDate } from "./json";
import { visibleJobs } from "./visibility";
import { type TenantTransaction, withTenant } from "./with-tenant";

export type JobQuestion = {
  readonly search: string;
  readonly stage: StageKey | null;
  readonly verdict: Verdict | null;
  readonly techId: string | null;
  readonly needsAttention: boolean;
  readonly openCallback: boolean;
  /** Startups due from a day on and before another; only those that are not signed. */
  readonly due: { readonly from: string | null; readonly before: string } | null;
  readonly sort: JobColumn;
  readonly descending: boolean;
};

/** Where a page lies: it begins after one job or ends before one, by number; neither is the first page. */
export type JobPlace = {
  readonly take: number;
  readonly after: number | null;
  readonly before: number | null;
};

export function jobList(scope: TenantScope) {
  return {
    /** Jobs in the order asked for. */
    page: (question: JobQuestion, place: JobPlace): Promise<readonly JobSummary[]> =>
      withTenant(scope, async (tx) => {
        const numbers = await numbersOf(tx, scope, question, place);
        const rows = await tx.job.findMany({
          where: { AND: [visibleJobs(scope), { number: { in: numbers } }] },
          select: SUMMARY,
        });
        const byNumber = new Map(rows.map((row) => [row.number, row]));
        return numbers.flatMap((number) => {
          const row = byNumber.get(number);
          return row ? [toSummary(row)] : [];
        });
      }),

    /** Street and number of some jobs, by id. */
    addresses: (ids: readonly JobId[]): Promise<ReadonlyMap<string, string>> =>
      withTenant(scope, async (tx) => {
        const rows = await tx.job.findMany({
          where: { AND: [visibleJobs(scope), { id: { in: [...ids] } }] },
          select: { id: true, home: { select: { addressLine: true } } },
        });
        return new Map(rows.map(({ id, home }) => [id, home.addressLine]));
      }),

    /** How many jobs there are, counted no further than `most`. */
    count: (question: JobQuestion, most: number): Promise<number> =>
      withTenant(scope, async (tx) => {
        const newest: JobQuestion = { ...question, sort: "number", descending: true };
        return (await numbersOf(tx, scope, newest, { take: most, after: null, before: null })).length;
      }),

    /** Jobs whose startup is due from a day on and before another. */
    between: (from: string, before: string, take: number): Promise<readonly JobSummary[]> =>
      withTenant(scope, async (tx) => {
        const rows = await tx.job.findMany({
          where: {
            AND: [
              visibleJobs(scope),
              { startupDue: { gte: asDate(from) ?? undefined, lt: asDate(before) ?? undefined } },
            ],
          },
          orderBy: [{ startupDue: "asc" }, { number: "asc" }],
          take,
          select: SUMMARY,
        });
        return rows.map(toSummary);
      }),
  };
}

/** By the database's own function: what row-level security would keep from an index it may use. */
async function numbersOf(
  tx: TenantTransaction,
  scope: TenantScope,
  question: JobQuestion,
  { take, after, before }: JobPlace,
): Promise<number[]> {
  const { sort: column } = JOB_COLUMNS[question.sort];
  const words = question.search.trim().split(/\s+/).filter(Boolean);
  const { due, techId } = question;
  const filters = {
    ...(question.stage ? { stage: question.stage } : {}),
    ...(question.verdict ? { verdict: question.verdict } : {}),
    ...(question.needsAttention ? { attention: true } : {}),
    ...(question.openCallback ? { complaint: true } : {}),
    ...(due ? { startupOpen: true, dueBefore: due.before } : {}),
    ...(due?.from ? { dueFrom: due.from } : {}),
    ...(techId ? { assignedTo: techId } : {}),
    // A tech sees assigned jobs only, whatever was asked for.
    ...(scope.role === "tech" ? { onlyOf: scope.userId } : {}),
  };
  // What ends before a job is what begins after it the other way round.
  const beside = after ?? before;
  const turned = after === null && before !== null;
  const key = beside === null ? null : await keyOf(tx, scope, column, beside);
  if (turned && key === null) return numbersOf(tx, scope, question, { take, after: null, before: null });
  const rows = await tx.$queryRaw<{ number: number }[]>`
    SELECT number FROM list_jobs(${words}::text[], ${JSON.stringify(filters)}::jsonb, ${column},
      ${question.descending !== turned}::boolean, ${key}::text, ${key === null ? null : beside}::int, ${take}::int)`;
  const numbers = rows.map((row) => row.number);
  return turned ? numbers.reverse() : numbers;
}

/** The sort key of the job a page begins after; `null` when that job is no more, which begins anew. */
async function keyOf(
  tx: TenantTransaction,
  scope: TenantScope,
  column: string,
  number: number,
): Promise<string | null> {
  const rows = await tx.$queryRaw<{ key: string }[]>`
    SELECT to_jsonb(j)->>${column} AS key FROM job j
    WHERE j.tenant_id = ${scope.tenantId}::uuid AND j.number = ${number}::int`;
  return rows[0]?.key ?? null;
}

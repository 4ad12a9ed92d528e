import type { JobId, UserId } from "@/lib/domain/ids";
import { asId } from "@/lib/domain/ids";
import type { Job, JobState, JobSummary } from "@/lib/domain/jobs";
import type { TenantScope } from "@/lib/domain/scope";
import type { StageKey } from "@/lib/domain/stages";
import type { Verdict } from "@/lib/engineering/findings";
import { AppError, notFound } from "@/lib/errors";
import { appendActivity } from "./activity";
import type { Prisma } from "./generated/client";
import { assertActiveMembers, assign, createJob, type NewJob } from "./job-writes";
import { asDate, asDay } from "./json";
import { visibleJobs } from "./visibility";
import { withTenant } from "./with-tenant";

export type JobFilter = {
  readonly search: string;
  readonly stage: StageKey | null;
  readonly verdict: Verdict | null;
  readonly techId: string | null;
  readonly needsAttention: boolean;
};

const SUMMARY = {
  id: true,
  number: true,
  title: true,
  state: true,
  currentStage: true,
  verdict: true,
  attention: true,
  startupDue: true,
  reviewDue: true,
  customer: { select: { name: true } },
  home: { select: { city: true, region: true } },
  jobAssignments: { select: { userId: true, member: { select: { name: true } } } },
} as const satisfies Prisma.JobSelect;

type SummaryRow = Prisma.JobGetPayload<{ select: typeof SUMMARY }>;

export function jobs(scope: TenantScope) {
  return {
    create: (input: NewJob): Promise<JobId> => withTenant(scope, (tx) => createJob(tx, scope, input)),

    /** One page of jobs, newest number first. */
    list: (
      filter: JobFilter,
      page: { readonly take: number; readonly beforeNumber: number | null },
    ): Promise<readonly JobSummary[]> =>
      withTenant(scope, async (tx) => {
        const found = filter.search.trim() === "" ? null : await searchNumbers(tx, scope, filter, page);
        const rows = await tx.job.findMany({
          where: {
            AND: [
              visibleJobs(scope),
              whereOf(filter),
              page.beforeNumber ? { number: { lt: page.beforeNumber } } : {},
              found ? { number: { in: found } } : {},
            ],
          },
          orderBy: { number: "desc" },
          take: page.take,
          select: SUMMARY,
        });
        return rows.map(toSummary);
      }),

    find: (id: JobId): Promise<Job | null> =>
      withTenant(scope, async (tx) => {
        const row = await tx.job.findFirst({
          where: { AND: [visibleJobs(scope), { id }] },
          select: {
            ...SUMMARY,
            version: true,
            note: true,
            weatherFileId: true,
            createdAt: true,
            customer: true,
            home: true,
          },
        });
        if (!row) return null;
        const { customer, home } = row;
        return {
          ...toSummary(row),
          version: row.version,
          note: row.note,
          weatherFileId: row.weatherFileId,
          createdAt: row.createdAt.toISOString(),
          customer: {
            id: asId<"customer">(customer.id),
            name: customer.name,
            email: customer.email,
            phone: customer.phone,
          },
          home: {
            id: asId<"home">(home.id),
            addressLine: home.addressLine,
            city: home.city,
            region: home.region,
            postalCode: home.postalCode,
            elevationFt: home.elevationFt,
            builder: home.builder,
          },
        };
      }),

    /** Sets who is assigned and when it is due. */
    schedule: (
      id: JobId,
      plan: {
        readonly techIds: readonly string[];
        readonly startupDue: string | null;
        readonly reviewDue: string | null;
        readonly expectedVersion: number;
      },
    ): Promise<void> =>
      withTenant(scope, async (tx) => {
        const changed = await tx.job.updateMany({
          where: { AND: [visibleJobs(scope), { id, version: plan.expectedVersion }] },
          data: {
            startupDue: asDate(plan.startupDue),
            reviewDue: asDate(plan.reviewDue),
            version: { increment: 1 },
            updatedAt: new Date(),
            updatedBy: scope.userId,
          },
        });
        if (changed.count === 0) {
          const there = await tx.job.findFirst({
            where: { AND: [visibleJobs(scope), { id }] },
            select: { id: true },
          });
          if (!there) throw notFound();
          throw new AppError(
            "CONFLICT",
            "Someone else changed this job just now. Reload to see it; then make your change again.",
          );
        }
        await assertActiveMembers(tx, scope, plan.techIds);
        await tx.jobAssignment.deleteMany({ where: { tenantId: scope.tenantId, jobId: id } });
        await assign(tx, scope, id, plan.techIds);
        await appendActivity(tx, scope, {
          action: "job scheduled",
          entity: "job",
          entityId: id,
          jobId: id,
          after: plan,
        });
      }),
  };
}

/** Numbers of the jobs that hold every word, by the database's own search: it may use its text index. */
async function searchNumbers(
  tx: Prisma.TransactionClient,
  scope: TenantScope,
  filter: JobFilter,
  page: { readonly take: number; readonly beforeNumber: number | null },
): Promise<number[]> {
  const words = filter.search.trim().split(/\s+/);
  const assignedTo = scope.role === "tech" ? scope.userId : filter.techId;
  const rows = await tx.$queryRaw<{ number: number }[]>`
    SELECT number FROM search_jobs(${words}::text[], NULL, ${filter.stage}::text, ${filter.verdict}::text,
      ${filter.needsAttention ? true : null}::boolean, ${assignedTo}::uuid, ${page.beforeNumber}::int, ${page.take}::int)`;
  return rows.map((row) => row.number);
}

function whereOf(filter: JobFilter): Prisma.JobWhereInput {
  return {
    AND: [
      filter.stage ? { currentStage: filter.stage } : {},
      filter.verdict ? { verdict: filter.verdict } : {},
      filter.techId ? { jobAssignments: { some: { userId: filter.techId } } } : {},
      filter.needsAttention ? { needsAttention: true } : {},
    ],
  };
}

function toSummary(row: SummaryRow): JobSummary {
  return {
    id: asId<"job">(row.id),
    number: row.number,
    title: row.title,
    state: row.state as JobState,
    currentStage: row.currentStage as StageKey | null,
    verdict: row.verdict as Verdict | null,
    attention: row.attention,
    startupDue: asDay(row.startupDue),
    reviewDue: asDay(row.reviewDue),
    customerName: row.customer.name,
    place: `${row.home.city}, ${row.home.region}`,
    techs: row.jobAssignments.map((one) => ({ userId: one.userId as UserId, name: one.member.name })),
  };
}

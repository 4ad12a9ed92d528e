import { asId, type UserId } from "@/lib/domain/ids";
import type { JobState, JobSummary } from "@/lib/domain/jobs";
import type { StageKey } from "@/lib/domain/stages";
import type { Verdict } from "@/lib/engineering/findings";
import type { Prisma } from "./generated/client";
import { asDay } from "./json";

/** What a list reads of a job. */
export const SUMMARY = {
  id: true,
  number: true,
  version: true,
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

export function toSummary(row: SummaryRow): JobSummary {
  return {
    id: asId<"job">(row.id),
    number: row.number,
    version: row.version,
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

import type { TenantScope } from "@/lib/domain/scope";
import { STAGE_FIELDS } from "@/lib/domain/stages";
import type { StartupProgress } from "@/lib/domain/startup-progress";
import type { Verdict } from "@/lib/engineering/findings";
import type { Prisma } from "./generated/client";
import { asDate, asDay } from "./json";
import { visibleJobs } from "./visibility";
import { withTenant } from "./with-tenant";

const MOST = 100;
const DAY_MS = 86_400_000;
/** A startup that was due and is not signed stays on the list this long. */
const LATE_DAYS = 14;

const FIELDS = {
  id: true,
  number: true,
  startupDue: true,
  customer: { select: { name: true } },
  home: { select: { city: true, region: true } },
  jobAssignments: { select: { member: { select: { name: true } } } },
  stageRecords: {
    where: { stage: "startup_record" },
    orderBy: { revision: "desc" },
    take: 1,
    select: { state: true, inputs: true, verdict: true },
  },
  fieldContacts: { select: { lastAt: true, waitingFields: true, waitingPhotos: true } },
  attachments: { where: { removedAt: null, kind: "photo" }, select: { heldAt: true } },
  questions: { where: { closedAt: null, answer: null }, select: { id: true } },
  heldValues: { where: { state: "waiting" }, select: { id: true } },
} as const satisfies Prisma.JobSelect;

export function startupProgress(scope: TenantScope) {
  return {
    /** Startups due today or lately, and those a phone was in contact about within a day. */
    today: (today: string): Promise<readonly StartupProgress[]> =>
      withTenant(scope, async (tx) => {
        const due = new Date(`${today}T00:00:00Z`);
        const rows = await tx.job.findMany({
          where: {
            AND: [
              visibleJobs(scope),
              { state: "open" },
              {
                OR: [
                  { startupDue: asDate(today) },
                  {
                    startupDue: { gte: new Date(due.getTime() - LATE_DAYS * DAY_MS), lt: due },
                    stageRecords: { none: { stage: "startup_record", state: "signed" } },
                  },
                  { fieldContacts: { some: { lastAt: { gt: new Date(Date.now() - DAY_MS) } } } },
                  { heldValues: { some: { state: "waiting" } } },
                ],
              },
            ],
          },
          orderBy: [{ startupDue: "asc" }, { number: "asc" }],
          take: MOST,
          select: FIELDS,
        });
        return rows.map(toProgress);
      }),

    ofJob: (jobId: string): Promise<StartupProgress | null> =>
      withTenant(scope, async (tx) => {
        const row = await tx.job.findFirst({
          where: { AND: [visibleJobs(scope), { id: jobId }] },
          select: FIELDS,
        });
        return row ? toProgress(row) : null;
      }),
  };
}

const NEEDED = Object.entries(STAGE_FIELDS.startup_record)
  .filter(([, field]) => field.neededToSign === true)
  .map(([key]) => key);

function toProgress(row: Prisma.JobGetPayload<{ select: typeof FIELDS }>): StartupProgress {
  const record = row.stageRecords[0];
  const inputs = (record?.inputs ?? {}) as Readonly<Record<string, unknown>>;
  const isGiven = (key: string) => (inputs[key] ?? null) !== null;
  const contacts = row.fieldContacts.map((one) => one.lastAt.getTime());
  const sum = (key: "waitingFields" | "waitingPhotos") =>
    row.fieldContacts.reduce((total, one) => total + one[key], 0);
  const held = row.attachments.filter((one) => one.heldAt !== null).length;
  return {
    jobId: row.id,
    number: row.number,
    customerName: row.customer.name,
    place: `${row.home.city}, ${row.home.region}`,
    startupDue: asDay(row.startupDue),
    techs: row.jobAssignments.map((one) => one.member.name).toSorted(),
    state: record === undefined ? "not begun" : record.state === "signed" ? "signed" : "draft",
    neededDone: NEEDED.filter(isGiven).length,
    needed: NEEDED.length,
    entered: Object.keys(STAGE_FIELDS.startup_record).filter(isGiven).length,
    verdict: (record?.verdict ?? null) as Verdict | null,
    lastContact: contacts.length === 0 ? null : new Date(Math.max(...contacts)).toISOString(),
    photos: row.attachments.length - held,
    waitingFields: sum("waitingFields"),
    waitingPhotos: sum("waitingPhotos"),
    openQuestions: row.questions.length,
    late: row.heldValues.length + held,
  };
}

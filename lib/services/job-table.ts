import { type JobQuestion, jobList } from "@/lib/db/job-list";
import { dayAfter, mondayOf } from "@/lib/domain/days";
import { JOB_COLUMNS } from "@/lib/domain/job-table";
import type { JobSummary } from "@/lib/domain/jobs";
import type { TenantScope } from "@/lib/domain/scope";
import { STAGE_NAMES } from "@/lib/domain/stages";
import { csvText } from "@/lib/reports/csv";
import type { JobListQuery } from "@/lib/schemas/job";
import { companyToday } from "./company-today";

const PAGE = 50;
const CSV_PAGE = 1_000;
/** Jobs are counted so far: who has more narrows the question, not the count. */
const COUNT_MOST = 1_000;
/** More jobs than anyone reads in a week; beyond it the page says so. */
const WEEK_MOST = 1_000;

export type JobsPage = {
  readonly jobs: readonly JobSummary[];
  /** The number after which the next page begins; `null` at the end. */
  readonly next: number | null;
  /** The number before which the previous page ends; `null` on the first page. */
  readonly previous: number | null;
};

/** One page of the jobs table, and where the next one starts. */
export async function listJobs(scope: TenantScope, query: JobListQuery, take = PAGE): Promise<JobsPage> {
  const question = await questionOf(scope, query);
  const back = query.after === null && query.before !== null;
  // One more than is shown tells whether there are more that way.
  const found = await jobList(scope).page(question, {
    take: take + 1,
    after: query.after,
    before: query.before,
  });
  const more = found.length > take;
  if (back) {
    // Fewer than a page before it: that is the first page, shown whole.
    if (!more) return listJobs(scope, { ...query, before: null }, take);
    const page = found.slice(1);
    return { jobs: page, next: page.at(-1)?.number ?? null, previous: page[0]?.number ?? null };
  }
  const page = found.slice(0, take);
  return {
    jobs: page,
    next: more ? (page.at(-1)?.number ?? null) : null,
    // Past the end, where jobs went meanwhile, the way back is to the job the page was to begin after.
    previous: query.after === null ? null : (page[0]?.number ?? query.after),
  };
}

/** How many jobs a question finds, such as `37` or, beyond what is counted, `1,000 or more`. */
export async function countJobs(scope: TenantScope, query: JobListQuery): Promise<string> {
  const found = await jobList(scope).count(await questionOf(scope, query), COUNT_MOST);
  return `${found.toLocaleString("en-US")}${found === COUNT_MOST ? " or more" : ""}`;
}

/** All jobs a question finds, in its order, as CSV: page by page, so that memory holds one page only. */
export async function* jobsCsv(scope: TenantScope, query: JobListQuery): AsyncGenerator<string> {
  yield csvText(CSV_HEAD, []);
  let after: number | null = null;
  do {
    const page: JobsPage = await listJobs(scope, { ...query, after, before: null }, CSV_PAGE);
    if (page.jobs.length > 0) yield csvText([], page.jobs.map(csvRow));
    after = page.next;
  } while (after !== null);
}

const CSV_HEAD = [
  "Job",
  "Title",
  "Customer",
  "Place",
  "Waits for",
  "Verdict",
  "Needs attention",
  "Tech",
  "Startup",
  "Humidity review",
];

function csvRow(job: JobSummary): readonly (string | number | null)[] {
  return [
    job.number,
    job.title,
    job.customerName,
    job.place,
    job.currentStage ? STAGE_NAMES[job.currentStage] : "all signed",
    job.verdict ?? "",
    job.attention.join("; "),
    job.techs.map((tech) => tech.name).join(", "),
    job.startupDue ?? "",
    job.reviewDue ?? "",
  ];
}

export type WeekView = {
  readonly days: readonly string[];
  readonly today: string;
  readonly jobs: readonly JobSummary[];
  /** True when the week holds more jobs than are shown. */
  readonly more: boolean;
};

/** The startups of one week, Monday to Sunday. */
export async function weekView(scope: TenantScope, asked: string | null): Promise<WeekView> {
  const today = await companyToday(scope);
  const monday = mondayOf(asked ?? today);
  const days = Array.from({ length: 7 }, (_, index) => dayAfter(monday, index));
  const found = await jobList(scope).between(monday, dayAfter(monday, 7), WEEK_MOST + 1);
  return { days, today, jobs: found.slice(0, WEEK_MOST), more: found.length > WEEK_MOST };
}

async function questionOf(scope: TenantScope, query: JobListQuery): Promise<JobQuestion> {
  const today = query.due === null ? "" : await companyToday(scope);
  const column = JOB_COLUMNS[query.sort];
  return {
    search: query.search,
    stage: query.stage,
    verdict: query.verdict,
    techId: query.tech,
    needsAttention: query.attention === "1",
    openCallback: query.complaint === "1",
    due:
      query.due === null
        ? null
        : query.due === "overdue"
          ? { from: null, before: today }
          : { from: today, before: dayAfter(today, Number(query.due)) },
    sort: query.sort,
    descending: query.way === null ? column.descendingFirst : query.way === "down",
  };
}

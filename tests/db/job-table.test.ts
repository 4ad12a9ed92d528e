import { parse } from "csv-parse/sync";
import { beforeAll, expect, test } from "vitest";
import { jobs } from "@/lib/db/jobs";
import { withTenant } from "@/lib/db/with-tenant";
import { JOB_COLUMN_KEYS } from "@/lib/domain/job-table";
import type { JobSummary } from "@/lib/domain/jobs";
import type { TenantScope } from "@/lib/domain/scope";
import { jobListSchema } from "@/lib/schemas/job";
import { logCallback } from "@/lib/services/callbacks";
import { countJobs, jobsCsv, listJobs, weekView } from "@/lib/services/job-table";
import { previewLimit } from "@/lib/services/limit-preview";
import { scheduleJob } from "@/lib/services/plan-job";
import { addJob } from "../support/a-job";
import { type Crew, given, makeCrew } from "../support/people";
import { LOAD, openJob, save } from "../support/service-jobs";

let crew: Crew;
const ids: string[] = [];

beforeAll(async () => {
  crew = await makeCrew();
  for (let count = 0; count < 7; count++) ids.push(await openJob(crew.office));
  await plan(0, [crew.tech.userId], "2026-07-08");
  await plan(1, [crew.otherTech.userId], "2026-07-06");
  await plan(2, [], "2026-07-06");
  await save(crew.office, given(ids[3]), "load_summary", LOAD);
  await save(crew.office, given(ids[4]), "load_summary", { ...LOAD, indoorCoolingDbF: 68 });
  await logCallback(crew.office, {
    jobId: given(ids[5]),
    kind: "musty",
    reportedOn: "2026-07-20",
    reportedByName: "",
    complaint: "Smells",
  });
}, 120_000);

async function plan(at: number, techIds: readonly string[], startupDue: string | null): Promise<void> {
  const job = given(await jobs(crew.office).find(given(ids[at]) as JobSummary["id"]));
  await scheduleJob(crew.office, {
    jobId: job.id,
    expectedVersion: job.version,
    startupDue,
    reviewDue: null,
    techIds: [...techIds],
  });
}

const numbers = async (query: object, scope: TenantScope = crew.office, take = 50) =>
  (await listJobs(scope, jobListSchema.parse(query), take)).jobs.map((job) => job.number);

test.each([
  ["newest first", {}, [7, 6, 5, 4, 3, 2, 1]],
  ["startup, those without a date last", { sort: "startup" }, [2, 3, 1, 4, 5, 6, 7]],
  ["startup turned round", { sort: "startup", way: "down" }, [7, 6, 5, 4, 1, 3, 2]],
  ["an open callback", { complaint: "1" }, [6]],
  ["waits for", { stage: "load_summary", sort: "number", way: "up" }, [1, 2, 3, 4, 5, 6, 7]],
  ["a search", { search: "ember elm", sort: "number", way: "up" }, [1, 2, 3, 4, 5, 6, 7]],
  ["a search for what is a wildcard elsewhere", { search: "%" }, []],
  ["overdue: due before any later day", { due: "overdue", sort: "number", way: "up" }, [1, 2, 3]],
  ["falls short", { verdict: "falls short" }, [5]],
])("the table %s", async (_, query, expected) => {
  expect(await numbers(query)).toEqual(expected);
});

test.each(JOB_COLUMN_KEYS)(
  "by %s, pages of two hold every job once, in the order of one page",
  async (sort) => {
    for (const way of ["up", "down"]) {
      const whole = await numbers({ sort, way });
      expect(whole.toSorted((a, b) => a - b)).toEqual([1, 2, 3, 4, 5, 6, 7]);
      const paged: number[] = [];
      let after: number | null = null;
      do {
        const page: Awaited<ReturnType<typeof listJobs>> = await listJobs(
          crew.office,
          { ...jobListSchema.parse({ sort, way }), after },
          2,
        );
        paged.push(...page.jobs.map((job) => job.number));
        after = page.next;
      } while (after !== null);
      expect(paged).toEqual(whole);
      // Back from the last job: the pages of two that end before it, the first of them always whole.
      const from = given(whole.at(-1));
      const back = await listJobs(crew.office, { ...jobListSchema.parse({ sort, way }), before: from }, 2);
      expect(back.jobs.map((job) => job.number)).toEqual(whole.slice(4, 6));
      expect(back.next).toBe(whole[5]);
      const first = await listJobs(
        crew.office,
        { ...jobListSchema.parse({ sort, way }), before: whole[1] ?? 0 },
        2,
      );
      expect(first.jobs.map((job) => job.number)).toEqual(whole.slice(0, 2));
      expect(first.previous).toBeNull();
    }
  },
);

test("a tech sees assigned jobs only, whoever the question names", async () => {
  expect(await numbers({}, crew.tech)).toEqual([1]);
  expect(await numbers({ tech: crew.otherTech.userId }, crew.tech)).toEqual([]);
  expect(await numbers({ tech: crew.otherTech.userId })).toEqual([2]);
});

test.each([
  [{}, "7"],
  [{ tech: "tech" }, "1"],
  [{ search: "ember" }, "7"],
  [{ search: "nobody" }, "0"],
])("jobs are counted: %j", async (query, expected) => {
  const asked = "tech" in query ? { tech: crew.tech.userId } : query;
  expect(await countJobs(crew.office, jobListSchema.parse(asked))).toBe(expected);
});

/** Every filter with every order against a plain reading of the rows, in a company beyond the first walk of a question. */
test("filters and orders find what the rows say, also what is rare among thousands", async () => {
  const { office, tech } = await makeCrew();
  const job = await withTenant(office, (tx) => addJob(tx, office));
  // In parts: a transaction has 30 s, and every row has its triggers and indexes.
  for (const from of [2, 5_500, 11_000, 16_500]) {
    await withTenant(
      office,
      (tx) => tx.$executeRaw`
      INSERT INTO job (tenant_id, id, number, customer_id, home_id, title, verdict, current_stage, needs_attention, startup_due, created_by, updated_by)
      SELECT ${office.tenantId}::uuid, gen_random_uuid(), n, ${job.customerId}::uuid, ${job.homeId}::uuid,
        CASE WHEN n % 3000 = 7 THEN 'Quince' ELSE '' END,
        CASE WHEN n > 21900 THEN 'falls short' WHEN n % 2 = 0 THEN 'meets' END, CASE WHEN n % 5 = 0 THEN 'startup_record' ELSE 'load_summary' END,
        n % 4000 = 1, date '2026-01-01' + n % 97, ${office.userId}::uuid, ${office.userId}::uuid FROM generate_series(${from}::int, ${from === 2 ? 5_499 : from + 5_499}::int) n
        WHERE n <= 22000`,
    );
  }
  await withTenant(office, async (tx) => {
    await tx.$executeRaw`
      INSERT INTO job_assignment (tenant_id, job_id, user_id, assigned_by)
      SELECT tenant_id, id, ${tech.userId}::uuid, ${office.userId}::uuid FROM job WHERE number % 7000 = 3`;
  });
  const rows = await withTenant(office, (tx) =>
    tx.job.findMany({
      where: { tenantId: office.tenantId },
      select: {
        number: true,
        title: true,
        verdict: true,
        currentStage: true,
        needsAttention: true,
        startupDue: true,
        startupSort: true,
      },
    }),
  );
  type Row = (typeof rows)[number];
  const questions: readonly [object, (row: Row) => boolean][] = [
    [{ verdict: "falls short" }, (row) => row.verdict === "falls short"],
    [
      { verdict: "meets", stage: "startup_record" },
      (row) => row.verdict === "meets" && row.currentStage === "startup_record",
    ],
    [{ attention: "1" }, (row) => row.needsAttention],
    [
      { attention: "1", verdict: "falls short" },
      (row) => row.needsAttention && row.verdict === "falls short",
    ],
    [{ search: "quince" }, (row) => row.title === "Quince"],
    [{ search: "uin ember" }, (row) => row.title === "Quince"],
    [{ tech: tech.userId }, (row) => row.number % 7000 === 3],
    [{ tech: tech.userId, search: "quince" }, (row) => row.number % 7000 === 3 && row.title === "Quince"],
    [{ complaint: "1" }, () => false],
  ];
  for (const [query, holds] of questions) {
    const found = rows.filter(holds);
    const byNumber = found.map((row) => row.number).toSorted((a, b) => b - a);
    expect(await numbers(query, office), JSON.stringify(query)).toEqual(byNumber.slice(0, 50));
    const byStartup = found.toSorted((a, b) => +a.startupSort - +b.startupSort || a.number - b.number);
    expect(await numbers({ ...query, sort: "startup" }, office), JSON.stringify(query)).toEqual(
      byStartup.slice(0, 50).map((row) => row.number),
    );
    expect(
      (await numbers({ ...query, sort: "customer" }, office)).toSorted((a, b) => b - a),
      JSON.stringify(query),
    ).toEqual(byNumber.toReversed().slice(0, 50).toReversed());
  }
}, 120_000);

test("another company's question finds nothing of this one", async () => {
  const other = await makeCrew();
  expect(await numbers({ search: "ember" }, other.office)).toEqual([]);
});

test("assigning answers what needs attention at once", async () => {
  const needing = () => numbers({ attention: "1" });
  expect(await needing()).toContain(3);
  await plan(2, [crew.tech.userId], "2026-07-06");
  expect(await needing()).not.toContain(3);
  await plan(2, [], "2026-07-06");
  expect(await needing()).toContain(3);
});

test("the file holds every job of the question, and no formula", async () => {
  const evil = await openJob(crew.office, {});
  await withTenant(crew.office, (tx) =>
    tx.job.updateMany({ where: { tenantId: crew.office.tenantId, id: evil }, data: { title: "=1+1" } }),
  );
  let text = "";
  for await (const part of jobsCsv(crew.office, jobListSchema.parse({}))) text += part;
  const rows: string[][] = parse(text, { bom: true });
  expect(rows.length).toBe(1 + 8);
  expect(rows[0]?.slice(0, 3)).toEqual(["Job", "Title", "Customer"]);
  expect(rows[1]?.slice(0, 3)).toEqual(["8", "'=1+1", "Ann Ember"]);
  expect(text.indexOf("\uFEFF", 1)).toBe(-1);
});

test("a week holds Monday to Sunday", async () => {
  const week = await weekView(crew.office, "2026-07-09");
  // 6 July 2026 is a Monday: 1 January 2026 is a Thursday, 186 days before, and 186 = 26 weeks and 4 days.
  expect([week.days[0], week.days[6]]).toEqual(["2026-07-06", "2026-07-12"]);
  expect(week.jobs.map((job) => job.number)).toEqual([2, 3, 1]);
});

test("a preview names the jobs that a limit would judge differently, and keeps nothing", async () => {
  const before = await numbers({ verdict: "falls short" });
  const preview = await previewLimit(crew.owner, { key: "load.indoorCoolingDb", value: "78" });
  expect(preview.looked).toBe(preview.total);
  expect(preview.changes.map((one) => [one.number, one.to])).toContainEqual([4, "falls short"]);
  // Job 5 falls short at 68 °F either way: as a whole it stays, and so does the check.
  expect(preview.changes.map((one) => one.number)).not.toContain(5);
  const changed = preview.changes.find((one) => one.number === 4);
  expect(changed?.findings.map((one) => one.to)).toContain("falls short");
  expect(preview.verdicts).toBe(preview.changes.filter((one) => one.from !== one.to).length);
  expect(await numbers({ verdict: "falls short" })).toEqual(before);
});

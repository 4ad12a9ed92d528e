import { parse } from "csv-parse/sync";
import { afterAll, beforeAll, expect, test } from "vitest";
import { closeDatabase } from "@/lib/db/client";
import { withTenant } from "@/lib/db/with-tenant";
import type { TenantScope } from "@/lib/domain/scope";
import { acrossJobsSchema } from "@/lib/schemas/across-jobs";
import { comparison, JOBS_A_PAGE, whatGoesWith } from "@/lib/services/across-jobs";
import { acrossJobsCsv } from "@/lib/services/across-jobs-csv";
import { instrumentsReport } from "@/lib/services/instrument-report";
import { listSavedViews, removeView, saveView } from "@/lib/services/saved-views";
import { type Crew, makeCrew } from "../support/people";
import { openJob, refusedBy } from "../support/service-jobs";

let crew: Crew;
const TAPS = ["tap 2", "tap 3", "tap 4"] as const;
const JOBS = 66;

beforeAll(async () => {
  crew = await makeCrew();
  // Every third job has tap 4; of these all have a complaint. Share above the limit: 0, 1, … 65 %.
  for (let index = 0; index < JOBS; index += 1) await factsOf(crew.owner, await openJob(crew.office), index);
}, 60_000);
afterAll(closeDatabase);

/** Facts as a signed startup would leave them; how they come about is tested elsewhere. */
function factsOf(scope: TenantScope, jobId: string, index: number): Promise<unknown> {
  return withTenant(scope, (tx) =>
    tx.jobFact.create({
      data: {
        tenantId: scope.tenantId,
        jobId,
        startupSignedOn: new Date(`2026-0${1 + (index % 9)}-15T00:00:00Z`),
        startupMonth: 1 + (index % 9),
        secondStageAirflowSetting: TAPS[index % 3] ?? null,
        secondStageCfmPerTon: 300 + index,
        capacitySetting: index % 2 === 0 ? "2 tons" : "3 tons",
        stepBackToFirstStage: index % 2 === 1,
        builder: index === 0 ? "=Builder & Sons" : "",
        shareAboveLimitPct: index,
        humidityComplaintCount: index % 3 === 2 ? 1 : 0,
        callbackCount: index % 3 === 2 ? 1 : 0,
        verdict: index % 3 === 2 ? "falls short" : index === 0 ? null : "meets",
        engineVersion: "test",
      },
    }),
  );
}
const ask = (query: Record<string, unknown> = {}) => acrossJobsSchema.parse(query);

test("the setting that holds all complaints is said first, with its counts", async () => {
  const found = await whatGoesWith(crew.owner, ask());
  expect(found).toMatchObject({ jobs: JOBS, complaints: 22 });
  expect(found.contrasts[0]).toMatchObject({
    by: "secondStageAirflowSetting",
    group: { value: "tap 4", jobs: 22, complaints: 22 },
    rest: { jobs: 44, complaints: 0 },
  });
  expect(found.words).toMatch(/^All 22 jobs .* second-stage airflow setting: tap 4/);
});

test("the verdicts of a group are counted beside its complaints; a job not judged is in none", async () => {
  const { verdicts, groups } = await comparison(crew.owner, { ...ask(), by: "secondStageAirflowSetting" });
  expect(verdicts?.map(({ name }) => name)).toEqual(groups.map(({ name }) => name));
  expect(verdicts).toContainEqual({ name: "tap 4", jobs: 22, counts: { "falls short": 22 } });
  expect(verdicts).toContainEqual({ name: "tap 2", jobs: 22, counts: { meets: 21 } });
  expect((await comparison(crew.owner, { ...ask(), by: "verdict" })).verdicts).toBeNull();
});

test("few jobs of a group are drawn one by one, also those without the setting", async () => {
  const few = ask({ measure: "shareAboveLimitPct", from: "2026-01-01", to: "2026-02-28" });
  const { spread } = await comparison(crew.owner, { ...few, by: "builder" });
  // Jobs 0, 1, 9, 10, … 54, 55, 63 and 64 were signed in January and February; job 0 alone names a builder.
  const inBoth = Array.from({ length: JOBS }, (_, index) => index).filter((index) => index % 9 < 2);
  expect(spread?.strips.map(({ values }) => values)).toEqual(
    expect.arrayContaining([[0], inBoth.filter((index) => index > 0)]),
  );
});

test("steps, yes and no, seasons and months are grouped by what they are", async () => {
  const groupsBy = async (by: "secondStageCfmPerTon" | "stepBackToFirstStage" | "season") =>
    (await comparison(crew.owner, { ...ask(), by })).groups.map(({ name, jobs }) => [name, jobs]).sort();
  // 300 to 365 in steps of 25, counted by hand.
  expect(await groupsBy("secondStageCfmPerTon")).toEqual([
    ["300 to 325", 25],
    ["325 to 350", 25],
    ["350 to 375", 16],
  ]);
  expect(await groupsBy("stepBackToFirstStage")).toEqual([
    ["no", 33],
    ["yes", 33],
  ]);
  // Months 1 to 9 in turn; 66 = 7 × 9 + 3, so January to March have one job more.
  expect(await groupsBy("season")).toEqual([
    ["Autumn (September to November)", 7],
    ["Spring (March to May)", 22],
    ["Summer (June to August)", 21],
    ["Winter (December to February)", 16],
  ]);
});

test("the spread of a measure is that of its values, by group", async () => {
  const { spread } = await comparison(crew.owner, {
    ...ask({ measure: "shareAboveLimitPct" }),
    by: "capacitySetting",
  });
  expect(spread).toMatchObject({ least: 0, most: 65 });
  const even = spread?.strips.find((strip) => strip.name === "2 tons");
  // 0, 2, … 64: median 32, quartiles 16 and 48.
  expect(even?.quantiles.slice(1, 4)).toEqual([16, 32, 48]);
  expect(even?.values).toHaveLength(33);
  expect(even?.bins.reduce((sum, jobs) => sum + jobs, 0)).toBe(33);
});

test("the jobs of a group come a page at a time, each once", async () => {
  const pages = await Promise.all(
    [1, 2].map((page) =>
      comparison(crew.owner, { ...ask({ value: "", page: String(page) }), by: "fanBetweenCalls" }),
    ),
  );
  expect(pages.map((page) => page.chosen?.jobs.length)).toEqual([JOBS_A_PAGE, JOBS - JOBS_A_PAGE]);
  expect(new Set(pages.flatMap((page) => page.chosen?.jobs.map((job) => job.jobId))).size).toBe(JOBS);
});

test("days limit the question", async () => {
  const found = await whatGoesWith(crew.owner, ask({ from: "2026-02-01", to: "2026-02-28" }));
  expect(found.jobs).toBe(8);
});

test("the export holds every job, no formula, and nobody else's", async () => {
  const other = await makeCrew();
  const textOf = (scope: TenantScope) => new Response(acrossJobsCsv(scope, ask())).text();
  const rows = parse(await textOf(crew.owner), { bom: true, columns: true }) as Record<string, string>[];
  expect(rows).toHaveLength(JOBS);
  expect(rows.map((row) => row.Builder).filter((builder) => builder !== "")).toEqual(["'=Builder & Sons"]);
  expect(rows.filter((row) => row["Second-stage airflow setting"] === "tap 4")).toHaveLength(22);
  expect(parse(await textOf(other.owner), { bom: true, columns: true })).toEqual([]);
});

test("a kept question belongs to who kept it; one of the same name replaces it", async () => {
  const keep = (query: string) => saveView(crew.owner, "across-jobs", { name: "Mine", query, shared: false });
  await keep("by=season");
  const viewId = await keep("by=builder");
  expect(await listSavedViews(crew.owner, "across-jobs")).toMatchObject([
    { name: "Mine", query: "by=builder" },
  ]);
  expect(await listSavedViews(crew.office, "across-jobs")).toEqual([]);
  expect(await refusedBy(removeView(crew.office, "across-jobs", { viewId }))).toMatchObject({
    code: "NOT_FOUND",
  });
  await removeView(crew.owner, "across-jobs", { viewId });
  expect(await listSavedViews(crew.owner, "across-jobs")).toEqual([]);
});

test("a company without instruments has a report without lines", async () => {
  expect(await instrumentsReport(crew.owner, new Date())).toEqual({ instruments: [], thermostats: [] });
});

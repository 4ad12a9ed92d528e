import { expect, test } from "vitest";
import { statementNames } from "@/lib/db/statement-names";
import { withTenant } from "@/lib/db/with-tenant";
import type { TenantScope } from "@/lib/domain/scope";
import { jobListSchema } from "@/lib/schemas/job";
import { listJobs } from "@/lib/services/job-table";
import { addJob } from "../support/a-job";
import { makeCompany } from "../support/companies";

test("a statement gets a name when it has come five times, and keeps it; another gets another", () => {
  const nameOf = statementNames(10);
  const asked = (sql: string) => Array.from({ length: 6 }, () => nameOf({ sql }));
  expect(asked("SELECT 1").map((name) => name !== "")).toEqual([false, false, false, false, true, true]);
  const first = nameOf({ sql: "SELECT 1" });
  expect(asked("SELECT 2").at(-1)).not.toBe(first);
  expect(nameOf({ sql: "SELECT 1" })).toBe(first);
});

test("beyond the most names a statement stays nameless, however often it comes", () => {
  const nameOf = statementNames(2);
  for (const sql of ["a", "b", "c"]) for (let time = 0; time < 9; time++) nameOf({ sql });
  expect(["a", "b", "c"].map((sql) => nameOf({ sql }) !== "")).toEqual([true, true, false]);
});

test("texts of a thousand lengths that come once each take no name from those that come often", () => {
  const nameOf = statementNames(1);
  for (let length = 0; length < 1_000; length++) expect(nameOf({ sql: `of ${length}` })).toBe("");
  for (let time = 0; time < 4; time++) expect(nameOf({ sql: "often" })).toBe("");
  expect(nameOf({ sql: "often" })).not.toBe("");
});

test("a list of keys stays nameless: its plan is made for the company that asks", () => {
  const nameOf = statementNames(10);
  const often = (sql: string) => Array.from({ length: 9 }, () => nameOf({ sql })).at(-1);
  expect(often('SELECT name FROM home WHERE tenant_id IN ($1,$2) AND "id" IN ($3,$4) OFFSET $5')).toBe("");
  expect(often("SELECT name FROM home WHERE tenant_id = $1 AND id IN ($2)")).not.toBe("");
});

/** What a small company's plan did to a great one: all its rows were read for one page. */
test("no list of the jobs table is planned for one company and kept for the next", async () => {
  const small = await makeCompany();
  await withTenant(small, async (tx) => {
    for (let count = 0; count < 3; count++) await addJob(tx, small);
  });
  for (let time = 0; time < 12; time++) await listJobs(small, jobListSchema.parse({}));
  const kept = await keptPlans(small);
  // The page's own statements are kept, those that come with a list are not.
  expect(kept.some((text) => text.includes("list_jobs"))).toBe(true);
  expect(kept.filter((text) => text.includes("IN ($1,$2"))).toEqual([]);
  expect(kept.filter((text) => / IN \(\$\d+,\$\d+/.test(text))).toEqual([]);
});

async function keptPlans(scope: TenantScope): Promise<readonly string[]> {
  const rows = await withTenant(
    scope,
    (tx) => tx.$queryRaw<{ statement: string }[]>`SELECT statement FROM pg_prepared_statements`,
  );
  return rows.map((row) => row.statement);
}

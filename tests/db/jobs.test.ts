import type { Client } from "pg";
import { afterAll, beforeAll, expect, test } from "vitest";
import { closeDatabase } from "@/lib/db/client";
import { type TenantTransaction, withTenant } from "@/lib/db/with-tenant";
import type { TenantScope } from "@/lib/domain/scope";
import { addJob } from "../support/a-job";
import { makeCompany } from "../support/companies";
import { connect, inRole } from "../support/connect";

let client: Client;

beforeAll(async () => {
  client = await connect();
});
afterAll(async () => {
  await client.end();
  await closeDatabase();
});

async function search(tx: TenantTransaction, ...words: string[]): Promise<readonly number[]> {
  const rows = await tx.$queryRaw<{ number: number }[]>`
    SELECT number FROM list_jobs(${words}, '{}', 'number', true, null, null, 50)`;
  return rows.map((row) => row.number);
}

test("jobs of a company are numbered from 1 without gaps, also when made at once", async () => {
  const scope = await makeCompany();
  const made = await Promise.all(
    Array.from({ length: 10 }, () => withTenant(scope, (tx) => addJob(tx, scope))),
  );
  expect(made.map((job) => job.number).toSorted((a, b) => a - b)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10]);
});

test("a search finds parts of words of customer and address in any letter case, newest first", async () => {
  const scope = await makeCompany();
  await withTenant(scope, async (tx) => {
    await addJob(tx, scope, "ÉMILE Ortega");
    await addJob(tx, scope, "Bea Ortega");
    expect(await search(tx, "orteg")).toEqual([2, 1]);
    expect(await search(tx, "émi", "BAY")).toEqual([1]);
    expect(await search(tx, "77001", "nobody")).toEqual([]);
    expect(await search(tx)).toEqual([2, 1]);
  });
});

test("an old job is found below thousands of newer ones, and a page is full", async () => {
  const scope = await makeCompany();
  await withTenant(scope, async (tx) => {
    await addJob(tx, scope, "Rare Fern");
    await addJob(tx, scope, "Rare Fern");
    const { customerId, homeId } = await addJob(tx, scope, "Common Oak");
    await tx.$executeRaw`
      INSERT INTO job (tenant_id, id, number, customer_id, home_id, created_by, updated_by)
      SELECT ${scope.tenantId}::uuid, gen_random_uuid(), n, ${customerId}::uuid, ${homeId}::uuid,
        ${scope.userId}::uuid, ${scope.userId}::uuid FROM generate_series(4, 2103) n`;
    expect(await search(tx, "fern")).toEqual([2, 1]);
    expect(await search(tx, "elm", "rare")).toEqual([2, 1]);
    expect(await search(tx, "rare", "oak")).toEqual([]);
    expect(await search(tx, "are")).toEqual([2, 1]);
    const oaks = await search(tx, "oak");
    expect([oaks.length, oaks[0], oaks.at(-1)]).toEqual([50, 2103, 2054]);
  });
});

test("signs that mean something to the database are only signs to a search", async () => {
  const scope = await makeCompany();
  await withTenant(scope, async (tx) => {
    await addJob(tx, scope, "100% O'Neil");
    await addJob(tx, scope, "100 Oneil \\ Sons");
    expect(await search(tx, "100%")).toEqual([1]);
    expect(await search(tx, "o'n")).toEqual([1]);
    expect(await search(tx, "\\ sons")).toEqual([2]);
    expect(await search(tx, "elm_way")).toEqual([2, 1]);
    expect(await search(tx, "e_m")).toEqual([]);
    expect(await search(tx, "'; DROP TABLE job; --")).toEqual([]);
  });
});

test("a job is found by its customer's new name at once", async () => {
  const scope = await makeCompany();
  await withTenant(scope, async (tx) => {
    await addJob(tx, scope, "Old Name");
    await tx.customer.updateMany({ where: { tenantId: scope.tenantId }, data: { name: "New Name" } });
    await tx.home.updateMany({ where: { tenantId: scope.tenantId }, data: { city: "Shore" } });
    expect(await search(tx, "new", "shore")).toEqual([1]);
    expect(await search(tx, "old")).toEqual([]);
  });
});

test("a search stays inside the company, and finds nothing without one", async () => {
  const [ours, theirs] = [await makeCompany(), await makeCompany()];
  await withTenant(theirs, (tx) => addJob(tx, theirs, "Secret Person"));
  expect(await withTenant(ours, (tx) => search(tx, "secret"))).toEqual([]);
  const nowhere = await inRole(client, "app_user", null, () =>
    client.query("SELECT FROM list_jobs('{secret}', '{}', 'number', true, null, null, 50)"),
  );
  expect(nowhere.rowCount).toBe(0);
});

test("work is queued with the change that needs it, in its company's name", async () => {
  const scope = await makeCompany();
  const queue = (company: TenantScope, fail: boolean) =>
    withTenant(company, async (tx) => {
      await tx.$executeRaw`SELECT enqueue_work('test.task', '{"jobId": "1", "tenantId": "forged"}'::jsonb, 'once')`;
      if (fail) throw new Error("undo");
    });
  await expect(queue(scope, true)).rejects.toThrow("undo");
  const waiting = async () => {
    const { rows } = await client.query("SELECT payload FROM graphile_worker._private_jobs WHERE key = $1", [
      `${scope.tenantId}:once`,
    ]);
    return rows.map((row) => row.payload);
  };
  expect(await waiting()).toEqual([]);
  await queue(scope, false);
  await queue(scope, false);
  expect(await waiting()).toEqual([{ jobId: "1", tenantId: scope.tenantId }]);
});

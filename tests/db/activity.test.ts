import type { Client } from "pg";
import { afterAll, beforeAll, expect, test } from "vitest";
import { closeDatabase } from "@/lib/db/client";
import { withTenant } from "@/lib/db/with-tenant";
import type { TenantScope } from "@/lib/domain/scope";
import { makeCompany } from "../support/companies";
import { connect, inRole, refusal } from "../support/connect";

let client: Client;

beforeAll(async () => {
  client = await connect();
});
afterAll(async () => {
  await client.end();
  await closeDatabase();
});

function write(scope: TenantScope, action: string) {
  return withTenant(scope, (tx) =>
    tx.activity.create({
      data: {
        tenantId: scope.tenantId,
        actorId: scope.userId,
        action,
        entity: "job",
        after: { b: 1, a: [1.5, "é"] },
      },
    }),
  );
}

const firstBroken = (scope: TenantScope) =>
  inRole(client, "app_user", scope, async () => {
    const { rows } = await client.query("SELECT activity_first_broken_seq() AS seq");
    return rows[0].seq as string | null;
  });

test("entries of one company form one chain, also when written at once", async () => {
  const [one, other] = [await makeCompany(), await makeCompany()];
  await Promise.all(Array.from({ length: 12 }, (_, n) => write(n % 3 ? one : other, `step ${n}`)));
  const entries = await withTenant(one, (tx) => tx.activity.findMany({ orderBy: { seq: "asc" } }));
  expect(entries.map((entry) => Number(entry.seq))).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
  expect(entries[0]?.previousHash).toBe("");
  entries.slice(1).forEach((entry, n) => {
    expect(entry.previousHash).toBe(entries[n]?.hash);
  });
  expect(new Set(entries.map((entry) => entry.hash)).size).toBe(8);
  expect(await firstBroken(one)).toBeNull();
});

test("an entry whose change is rolled back leaves no gap", async () => {
  const scope = await makeCompany();
  await write(scope, "first");
  const undone = withTenant(scope, async (tx) => {
    await tx.activity.create({ data: { tenantId: scope.tenantId, action: "undone", entity: "job" } });
    throw new Error("undo");
  });
  await expect(undone).rejects.toThrow("undo");
  expect(Number((await write(scope, "second")).seq)).toBe(2);
  expect(await firstBroken(scope)).toBeNull();
});

test("the application may neither change nor remove entries", async () => {
  const scope = await makeCompany();
  await write(scope, "first");
  for (const sql of ["UPDATE activity SET action = 'x'", "DELETE FROM activity", "TRUNCATE activity"]) {
    expect(await refusal(inRole(client, "app_user", scope, () => client.query(sql)))).toBe("42501");
  }
  expect(await refusal(client.query("TRUNCATE activity"))).toBe("DW002");
});

test("an entry changed behind the database's back is found", async () => {
  const scope = await makeCompany();
  for (const action of ["one", "two", "three"]) await write(scope, action);
  // Only an owner of the tables can do this: he switches his own guards off.
  const tamper = async (sql: string) => {
    await client.query(
      "ALTER TABLE activity DISABLE TRIGGER USER; ALTER TABLE activity NO FORCE ROW LEVEL SECURITY",
    );
    await client.query(sql, [scope.tenantId]);
    await client.query(
      "ALTER TABLE activity ENABLE TRIGGER USER; ALTER TABLE activity FORCE ROW LEVEL SECURITY",
    );
  };
  await tamper("UPDATE activity SET action = 'forged' WHERE tenant_id = $1 AND seq = 2");
  expect(await firstBroken(scope)).toBe("2");
  await tamper("UPDATE activity SET action = 'two' WHERE tenant_id = $1 AND seq = 2");
  expect(await firstBroken(scope)).toBeNull();
  await tamper("DELETE FROM activity WHERE tenant_id = $1 AND seq = 3");
  expect(await firstBroken(scope)).toBe("3");
});

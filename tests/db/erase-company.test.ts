import type { Client } from "pg";
import { afterAll, beforeAll, expect, test } from "vitest";
import { closeDatabase } from "@/lib/db/client";
import { unscopedEraseCompany } from "@/lib/db/unscoped/erase-company";
import { unscopedTransaction } from "@/lib/db/unscoped/transaction";
import type { TenantScope } from "@/lib/domain/scope";
import { type Table, tenantTables } from "../support/catalog";
import { makeCompany } from "../support/companies";
import { connect, inRole } from "../support/connect";
import { rowFactory } from "../support/rows";

let client: Client;
let tables: readonly Table[];

beforeAll(async () => {
  client = await connect();
  tables = await tenantTables(client);
});
afterAll(async () => {
  await client.end();
  await closeDatabase();
});

/** Rows by table, as the company sees them. */
function countRows(scope: TenantScope): Promise<Readonly<Record<string, number>>> {
  return inRole(client, "app_user", scope, async () => {
    const counts: Record<string, number> = {};
    for (const table of tables) {
      const { rows } = await client.query(`SELECT count(*)::int AS n FROM "${table.name}"`);
      counts[table.name] = rows[0].n;
    }
    return counts;
  });
}

async function fill(scope: TenantScope): Promise<void> {
  const factory = rowFactory(client, tables);
  await inRole(client, "app_user", scope, async () => {
    for (const table of tables.filter((one) => !["membership", "tenant_counter"].includes(one.name))) {
      await factory.insert(table, await factory.values(table, scope));
    }
    // A job and its option point to each other; a signed record and the trail resist removal.
    await client.query("UPDATE job SET chosen_option_id = o.id FROM option o WHERE o.job_id = job.id");
    await client.query(
      "UPDATE stage_record SET state = 'signed', signed_by = $1, signed_at = now(), signature_name = 'A'",
      [scope.userId],
    );
    await client.query("SELECT enqueue_work('test.erase', '{}'::jsonb, queue => 'test')");
  });
}

test("a company goes wholly, and no other loses a row", async () => {
  const [leaving, staying] = [await makeCompany(), await makeCompany()];
  await fill(leaving);
  await fill(staying);
  // The leaving company's member also works for the one that stays.
  await inRole(client, "app_unscoped", null, () =>
    client.query(
      `INSERT INTO membership (tenant_id, user_id, name, email, role)
       SELECT $1, user_id, name, email, role FROM membership WHERE tenant_id = $2`,
      [staying.tenantId, leaving.tenantId],
    ),
  );
  const before = await countRows(staying);
  expect(Object.values(await countRows(leaving)).every((n) => n > 0)).toBe(true);

  await unscopedEraseCompany(leaving);

  expect(Object.entries(await countRows(leaving)).filter(([, n]) => n > 0)).toEqual([]);
  expect(await countRows(staying)).toEqual(before);
  const queued = await client.query(
    "SELECT payload->>'tenantId' AS company FROM graphile_worker._private_jobs",
  );
  const companies = queued.rows.map((row) => row.company);
  expect(companies).toContain(staying.tenantId);
  expect(companies).not.toContain(leaving.tenantId);
  const queues = await client.query("SELECT queue_name AS name FROM graphile_worker._private_job_queues");
  const names = queues.rows.map((row) => row.name);
  expect(names).toContain(`${staying.tenantId}:test`);
  expect(names).not.toContain(`${leaving.tenantId}:test`);
  const left = await unscopedTransaction(async (tx) => ({
    tenant: await tx.tenant.count({ where: { id: leaving.tenantId } }),
    sharedMember: await tx.user.count({ where: { id: leaving.userId } }),
  }));
  expect(left).toEqual({ tenant: 0, sharedMember: 1 });
});

test("the account of a person who belonged to that company only goes with it", async () => {
  const leaving = await makeCompany();
  await unscopedEraseCompany(leaving);
  expect(await unscopedTransaction((tx) => tx.user.count({ where: { id: leaving.userId } }))).toBe(0);
});

import { afterAll, beforeAll, expect, test } from "vitest";
import type { TenantScope } from "@/lib/domain/scope";
import { seededChance } from "@/lib/engineering/simulation/seeded-draws";
import { type EmbeddedServer, startEmbedded } from "@/prisma/embedded";
import { migrate } from "@/prisma/migrate";
import { connect, inRole } from "../support/connect";
import { makeServerFolder, processesOf, removeServerFolder, runScript } from "../support/own-server";

const ROUNDS = 20;
const COMPANY = "0190a000-0000-7000-8000-000000000001";
const MEMBER = "0190a000-0000-7000-8000-000000000002";
const SCOPE = { tenantId: COMPANY } as unknown as TenantScope;

let folder: string;
let server: EmbeddedServer;

beforeAll(async () => {
  folder = await makeServerFolder();
  // Written through to the disk, as in use.
  server = await startEmbedded({ folder });
  await migrate(server.url);
  const client = await connect(server.url);
  await inRole(client, "app_unscoped", null, async () => {
    await client.query("INSERT INTO tenant (id, name, time_zone) VALUES ($1, 'Kept', 'UTC')", [COMPANY]);
    await client.query(`INSERT INTO "user" (id, email, password_hash) VALUES ($1, 'a@example.com', 'none')`, [
      MEMBER,
    ]);
    await client.query(
      "INSERT INTO membership (tenant_id, user_id, name, email, role) VALUES ($1, $2, 'A', 'a@example.com', 'office')",
      [COMPANY, MEMBER],
    );
  });
  await client.end();
});
afterAll(async () => {
  await server.stop();
  expect(processesOf(folder)).toEqual([]);
  await removeServerFolder(folder);
});

const startSaving = () => runScript("save-until-killed.ts", [COMPANY, MEMBER], { DATABASE_URL: server.url });

/** What the database holds: the customers, those the trail tells of, and where the trail is broken. */
async function kept() {
  const client = await connect(server.url);
  try {
    return await inRole(client, "app_user", SCOPE, async () => {
      const customers = await client.query<{ id: string }>("SELECT id FROM customer");
      const told = await client.query<{ id: string }>("SELECT entity_id AS id FROM activity");
      const broken = await client.query<{ seq: string | null }>("SELECT activity_first_broken_seq() AS seq");
      return {
        customers: new Set(customers.rows.map((row) => row.id)),
        told: new Set(told.rows.map((row) => row.id)),
        broken: broken.rows[0]?.seq,
      };
    });
  } finally {
    await client.end();
  }
}

test(`${ROUNDS} times kill -9 of the program or of PostgreSQL: every acknowledged save is there`, async () => {
  const random = seededChance(20261125);
  const acknowledged = new Set<string>();
  let killedServers = 0;
  let saving = startSaving();
  for (let round = 0; round < ROUNDS; round++) {
    await saving.said(saving.lines.length + 1 + Math.floor(random() * 40));
    if (random() < 0.5) {
      process.kill(server.postmasterPid, "SIGKILL");
      killedServers += 1;
      server = await startEmbedded({ folder });
      // The program that was saving goes on by itself once PostgreSQL is back.
      const before = saving.lines.filter((line) => line.startsWith("saved")).length;
      while (saving.lines.filter((line) => line.startsWith("saved")).length === before) {
        await saving.said(saving.lines.length + 1);
      }
    } else {
      saving.signal("SIGKILL");
      await saving.ended;
    }
    for (const line of saving.lines) if (line.startsWith("saved ")) acknowledged.add(line.slice(6));
    const found = await kept();
    expect([...acknowledged].filter((id) => !found.customers.has(id))).toEqual([]);
    expect(found.broken).toBeNull();
    if (!saving.isRunning()) {
      // Nothing writes now: a save and its trail are both there or neither.
      expect(found.told).toEqual(found.customers);
      saving = startSaving();
    }
  }
  saving.signal("SIGKILL");
  await saving.ended;
  expect(killedServers).toBeGreaterThanOrEqual(5);
  expect(killedServers).toBeLessThanOrEqual(ROUNDS - 5);
  expect(acknowledged.size).toBeGreaterThan(ROUNDS);
}, 300_000);

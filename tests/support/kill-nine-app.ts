import { randomUUID } from "node:crypto";
import { mkdir } from "node:fs/promises";
import path from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { hashPassword } from "@/lib/auth/password";
import type { TenantScope } from "@/lib/domain/scope";
import { seededChance } from "@/lib/engineering/simulation/seeded-draws";
import { type EmbeddedServer, startEmbedded } from "@/prisma/embedded";
import { migrate } from "@/prisma/migrate";
import { connect, inRole } from "./connect";
import { callAction, signInOverHttp } from "./http-client";
import { makeServerFolder, processesOf, removeServerFolder, until } from "./own-server";
import { startWriter, type Writer } from "./record-writer";
import { type RunningApp, startApp } from "./running-app";

const EMAIL = "owner@example.com";
const PASSWORD = "a few words in a row";
const WRITERS = 3;

export type KillReport = {
  readonly acknowledged: number;
  readonly resent: number;
  readonly killedApps: number;
  readonly killedServers: number;
  /** What was wrong; empty when nothing was. */
  readonly faults: readonly string[];
};

/**
 * Kills the application or PostgreSQL with signal 9 again and again while people save through the built
 * application, starts what was killed, and looks for every acknowledged save. Leaves no process and no file.
 */
export async function killNineApp(rounds: number, seed: number): Promise<KillReport> {
  const folder = await makeServerFolder();
  const dataDir = path.join(folder, "files");
  await mkdir(dataDir);
  const random = seededChance(seed);
  const faults: string[] = [];
  const killed = { apps: 0, servers: 0 };
  let server: EmbeddedServer | null = null;
  let app: RunningApp | null = null;
  const writers: Writer[] = [];
  try {
    // Written through to the disk, as in use.
    server = await startEmbedded({ folder });
    await migrate(server.url);
    const company = await makeCompany(server.url);
    app = await startApp({ databaseUrl: server.url, dataDir });
    const { address } = app;
    const cookie = await signInOverHttp(address, EMAIL, PASSWORD);
    const jobs: string[] = [];
    for (let count = 0; count < WRITERS; count++) jobs.push(await openJob(address, cookie));
    for (const jobId of jobs) writers.push(startWriter({ address, cookie, jobId }));

    for (let round = 1; round <= rounds; round++) {
      const before = writers.map((one) => one.acknowledged.length);
      // Every writer has saved since the last kill, so each kill meets a working system.
      await until(
        () => writers.every((one, index) => one.acknowledged.length > (before[index] ?? 0)),
        `every writer saved in round ${round}`,
        60_000,
      );
      await pause(random() * 150);
      const promised = writers.map((one) => [...one.acknowledged]);
      // The first two rounds meet both.
      const killsApp = round <= 2 ? round === 1 : random() < 0.5;
      if (killsApp) {
        const port = Number(new URL(address).port);
        await app.kill("SIGKILL");
        killed.apps += 1;
        app = await startApp({ databaseUrl: server.url, dataDir, port });
      } else {
        const { url } = server;
        process.kill(server.postmasterPid, "SIGKILL");
        killed.servers += 1;
        server = await startEmbedded({ folder });
        if (server.url !== url) throw new Error("PostgreSQL came back at another address.");
      }
      const kept = await keptNotes(server.url, company, jobs);
      faults.push(...missingFrom(kept, promised).map((note) => `round ${round}: ${note} is gone`));
    }
    for (const one of writers) await one.stop();
    faults.push(...(await finalFaults(server.url, company, jobs, writers)));
  } finally {
    for (const one of writers) one.giveUp();
    await app?.kill("SIGKILL");
    await server?.stop();
    faults.push(...processesOf(folder).map((pid) => `PostgreSQL process ${pid} was left`));
    await removeServerFolder(folder);
  }
  return {
    acknowledged: writers.reduce((sum, one) => sum + one.acknowledged.length, 0),
    resent: writers.reduce((sum, one) => sum + one.resent(), 0),
    killedApps: killed.apps,
    killedServers: killed.servers,
    faults,
  };
}

/** A company whose owner can sign in. */
async function makeCompany(url: string): Promise<TenantScope> {
  const [tenantId, userId] = [randomUUID(), randomUUID()];
  const passwordHash = await hashPassword(PASSWORD);
  const client = await connect(url);
  await inRole(client, "app_unscoped", null, async () => {
    await client.query("INSERT INTO tenant (id, name, time_zone) VALUES ($1, 'Kept', 'UTC')", [tenantId]);
    await client.query('INSERT INTO "user" (id, email, password_hash) VALUES ($1, $2, $3)', [
      userId,
      EMAIL,
      passwordHash,
    ]);
    await client.query(
      "INSERT INTO membership (tenant_id, user_id, name, email, role) VALUES ($1, $2, 'Own Er', $3, 'owner')",
      [tenantId, userId, EMAIL],
    );
  });
  await client.end();
  return { tenantId, userId } as unknown as TenantScope;
}

async function openJob(address: string, cookie: string): Promise<string> {
  const answer = await callAction({
    address,
    cookie,
    page: "/jobs/new",
    file: "app/(office)/jobs/actions.ts",
    name: "createJob",
    input: {
      customerName: "Ann Ember",
      addressLine: "12 Elm Way",
      city: "Bay",
      region: "TX",
      postalCode: "77000",
      elevationFt: 30,
    },
  });
  if (!answer.ok) throw new Error(`No job: ${answer.code} ${answer.message}`);
  return String(answer.value);
}

/** The notes that the trail tells of, by job, in order. */
async function keptNotes(
  url: string,
  company: TenantScope,
  jobs: readonly string[],
): Promise<readonly (readonly string[])[]> {
  const client = await connect(url);
  try {
    return await inRole(client, "app_user", company, async () => {
      const { rows } = await client.query<{ job: string; note: string }>(
        `SELECT job_id AS job, after ->> 'notes' AS note FROM activity
         WHERE action = 'Load summary saved' ORDER BY seq`,
      );
      return jobs.map((job) => rows.filter((row) => row.job === job).map((row) => row.note));
    });
  } finally {
    await client.end();
  }
}

function missingFrom(
  kept: readonly (readonly string[])[],
  promised: readonly (readonly string[])[],
): readonly string[] {
  return promised.flatMap((notes, index) => notes.filter((note) => !kept[index]?.includes(note)));
}

/** When nobody writes any more: each save stands once, the records hold the last one, the trail is whole. */
async function finalFaults(
  url: string,
  company: TenantScope,
  jobs: readonly string[],
  writers: readonly Writer[],
): Promise<readonly string[]> {
  const faults: string[] = [];
  const kept = await keptNotes(url, company, jobs);
  const client = await connect(url);
  await inRole(client, "app_user", company, async () => {
    for (const [index, job] of jobs.entries()) {
      const sent = writers[index]?.acknowledged ?? [];
      if (JSON.stringify(kept[index]) !== JSON.stringify(sent))
        faults.push(`job ${index}: the trail does not tell of every save once and in order`);
      const { rows } = await client.query<{ version: number; note: string }>(
        "SELECT version, inputs ->> 'notes' AS note FROM stage_record WHERE job_id = $1",
        [job],
      );
      if (rows.length !== 1 || rows[0]?.version !== sent.length || rows[0]?.note !== sent.at(-1))
        faults.push(`job ${index}: the record is not that of the last save`);
    }
    const broken = await client.query<{ seq: string | null }>("SELECT activity_first_broken_seq() AS seq");
    if (broken.rows[0]?.seq !== null) faults.push(`the trail is broken at ${broken.rows[0]?.seq}`);
  });
  await client.end();
  return faults;
}

import { readFileSync, writeFileSync } from "node:fs";
import { rename } from "node:fs/promises";
import { createServer } from "node:net";
import path from "node:path";
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { embeddedPort, startEmbedded, stopEmbedded } from "@/prisma/embedded";
import { connect } from "../support/connect";
import { makeServerFolder, processesOf, removeServerFolder, runScript, until } from "../support/own-server";

// Starts programs and servers several times a test.
vi.setConfig({ testTimeout: 90_000 });

let folder: string;

beforeEach(async () => {
  folder = await makeServerFolder();
});
afterEach(async () => {
  await stopEmbedded(folder);
  expect(processesOf(folder)).toEqual([]);
  await removeServerFolder(folder);
});

async function query(url: string, sql: string): Promise<readonly Record<string, unknown>[]> {
  const client = await connect(url);
  try {
    return (await client.query(sql)).rows;
  } finally {
    await client.end();
  }
}

test("starts, is found again, stops, and keeps its rows", async () => {
  const server = await startEmbedded({ folder });
  await query(server.url, "CREATE TABLE kept AS SELECT 42 AS answer");
  expect(await embeddedPort(folder)).toBe(server.port);
  const again = await startEmbedded({ folder });
  expect([again.postmasterPid, again.url]).toEqual([server.postmasterPid, server.url]);

  await server.stop();
  expect(await embeddedPort(folder)).toBeNull();
  expect(processesOf(folder)).toEqual([]);
  // A project that was moved finds its data again.
  await rename(folder, `${folder}-moved`);
  folder = `${folder}-moved`;
  const next = await startEmbedded({ folder });
  expect(await query(next.url, "SELECT answer FROM kept")).toEqual([{ answer: 42 }]);
});

test("signs the application in as an ordinary owner, and writes through to the disk", async () => {
  const { url } = await startEmbedded({ folder });
  const rows = await query(
    url,
    `SELECT current_user::text AS name, rolsuper OR rolbypassrls AS mighty, current_setting('fsync') AS fsync,
       current_setting('synchronous_commit') AS commit, current_setting('listen_addresses') AS listens
     FROM pg_roles WHERE rolname = current_user`,
  );
  expect(rows).toEqual([
    { name: "dewledger", mighty: false, fsync: "on", commit: "on", listens: "127.0.0.1" },
  ]);
  const wrong = url.replace(/:[^:@]+@/, ":guess@");
  await expect(connect(wrong)).rejects.toMatchObject({ code: "28P01" });
});

test("two processes that start it at once share one server", async () => {
  const both = [runScript("hold-server.ts", [folder]), runScript("hold-server.ts", [folder])] as const;
  await Promise.all(both.map((one) => one.said(1)));
  expect(both[0].lines).toEqual(both[1].lines);
  for (const one of both) one.signal("SIGTERM");
  await Promise.all(both.map((one) => one.ended));
});

test("after kill -9 of the server, committed rows are there and nothing is left behind", async () => {
  const server = await startEmbedded({ folder });
  await query(server.url, "CREATE TABLE kept AS SELECT generate_series(1, 1000) AS n");
  process.kill(server.postmasterPid, "SIGKILL");
  const next = await startEmbedded({ folder });
  expect(next.postmasterPid).not.toBe(server.postmasterPid);
  // Programs that were connected find it again where it was.
  expect(next.url).toBe(server.url);
  expect(await query(next.url, "SELECT count(*)::int AS n FROM kept")).toEqual([{ n: 1000 }]);
  // The handle of the dead server must not stop the new one.
  await server.stop();
  expect(await embeddedPort(folder)).toBe(next.port);
});

test.each(["SIGINT", "SIGTERM", "the end of the program"] as const)(
  "stops with its process on %s",
  async (how) => {
    const holder = runScript("hold-server.ts", [folder]);
    await holder.said(1);
    if (how === "the end of the program") holder.closeInput();
    else holder.signal(how);
    await holder.ended;
    expect(processesOf(folder)).toEqual([]);
    expect(readFileSync(path.join(folder, "cluster/server.log"), "utf8")).toContain(
      "database system is shut down",
    );
  },
);

test("outlives kill -9 of its process, is attached to, and then stopped", async () => {
  const holder = runScript("hold-server.ts", [folder]);
  await holder.said(1);
  holder.signal("SIGKILL");
  await holder.ended;
  const server = await startEmbedded({ folder });
  expect([String(server.postmasterPid)]).toEqual(holder.lines);
  await server.stop();
  expect(processesOf(folder)).toEqual([]);
});

test("is not stopped by a process that only attached", async () => {
  const holder = runScript("hold-server.ts", [folder]);
  await holder.said(1);
  const guest = await startEmbedded({ folder });
  await guest.stop();
  expect(await embeddedPort(folder)).toBe(guest.port);
  holder.signal("SIGTERM");
  await holder.ended;
  await until(() => processesOf(folder).length === 0, "the server has stopped");
});

test("a lock that names another program's process is cleared", async () => {
  const server = await startEmbedded({ folder });
  const lock = path.join(folder, "cluster/postmaster.pid");
  const lines = readFileSync(lock, "utf8").split("\n");
  await server.stop();
  writeFileSync(lock, [process.pid, ...lines.slice(1)].join("\n"));
  const next = await startEmbedded({ folder });
  expect(await embeddedPort(folder)).toBe(next.port);
});

test("takes another port when its own is in use", async () => {
  const server = await startEmbedded({ folder });
  await server.stop();
  const other = createServer().listen(server.port, "127.0.0.1");
  await new Promise((resolve) => other.once("listening", resolve));
  try {
    const next = await startEmbedded({ folder });
    expect(next.port).not.toBe(server.port);
  } finally {
    other.close();
  }
});

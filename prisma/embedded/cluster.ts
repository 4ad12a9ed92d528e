/** The cluster of a folder: made at first, asked whether it answers, given the application's database. */
import { existsSync } from "node:fs";
import { appendFile, chown, mkdir, rename, rm, writeFile } from "node:fs/promises";
import path from "node:path";
import { Client } from "pg";
import { type Binaries, type RunAs, runBinary } from "./binaries";
import { type Remembered, readLock } from "./folder";

/** Settings of a new cluster. Local connections with a password only; nothing is left in memory at commit. */
const SETTINGS = `
listen_addresses = '127.0.0.1'
unix_socket_directories = ''
max_connections = 100
fsync = on
synchronous_commit = on
full_page_writes = on
timezone = 'UTC'
log_timezone = 'UTC'
`;
const UNSAFE_SETTINGS = "fsync = off\nsynchronous_commit = off\n";

export async function makeCluster(
  binaries: Binaries,
  kept: Remembered,
  runAs: RunAs,
  unsafe: boolean,
): Promise<void> {
  if (existsSync(path.join(kept.cluster, "PG_VERSION"))) return;
  // Made aside and renamed, so that a cluster is there wholly or not at all.
  const draft = `${kept.cluster}-${process.pid}`;
  const passwordFile = `${draft}.password`;
  await mkdir(path.dirname(draft), { recursive: true });
  await mkdir(draft, { mode: 0o700 });
  await writeFile(passwordFile, kept.superuserPassword, { mode: 0o600 });
  try {
    if (runAs.uid !== undefined && runAs.gid !== undefined) {
      await chown(draft, runAs.uid, runAs.gid);
      await chown(passwordFile, runAs.uid, runAs.gid);
    }
    const how = [
      "-U",
      "postgres",
      "-E",
      "UTF8",
      "--locale=C",
      "--auth=scram-sha-256",
      `--pwfile=${passwordFile}`,
    ];
    await runBinary(binaries.initdb, ["-D", draft, ...how, ...(unsafe ? ["--no-sync"] : [])], runAs);
    await appendFile(path.join(draft, "postgresql.conf"), SETTINGS + (unsafe ? UNSAFE_SETTINGS : ""));
    await rename(draft, kept.cluster).catch((error) => {
      if (!existsSync(path.join(kept.cluster, "PG_VERSION"))) throw error;
    });
  } finally {
    await rm(draft, { recursive: true, force: true });
    await rm(passwordFile, { force: true });
  }
}

/** The port on which this very cluster answers, or null. */
export async function portOfRunning(kept: Remembered): Promise<number | null> {
  const port = Number(readLock(kept.cluster)[3]);
  if (!port) return null;
  try {
    const { rows } = await asSuperuser(kept, port, (client) => client.query("SHOW data_directory"));
    return rows[0]?.data_directory === kept.cluster ? port : null;
  } catch {
    return null;
  }
}

async function asSuperuser<T>(
  kept: Remembered,
  port: number,
  work: (client: Client) => Promise<T>,
): Promise<T> {
  const password = kept.superuserPassword;
  const client = new Client({
    host: "127.0.0.1",
    port,
    user: "postgres",
    password,
    database: "postgres",
    connectionTimeoutMillis: 5_000,
  });
  client.on("error", () => undefined);
  await client.connect();
  try {
    return await work(client);
  } finally {
    await client.end();
  }
}

/** The application's login is an ordinary owner, so that forced row-level security binds it too. */
export async function makeDatabase(kept: Remembered, port: number): Promise<void> {
  await asSuperuser(kept, port, async (client) => {
    // Another process may be doing the same; the lock ends with the session.
    await client.query("SELECT pg_advisory_lock(1)");
    const role = await client.query("SELECT FROM pg_roles WHERE rolname = 'dewledger'");
    if (role.rowCount === 0) {
      await client.query(
        `CREATE ROLE dewledger LOGIN CREATEROLE PASSWORD ${client.escapeLiteral(kept.ownerPassword)}`,
      );
    }
    const database = await client.query("SELECT FROM pg_database WHERE datname = 'dewledger'");
    if (database.rowCount === 0) {
      // Sorts by code point as C does, and knows upper and lower case of all letters.
      await client.query(
        "CREATE DATABASE dewledger OWNER dewledger TEMPLATE template0 LOCALE_PROVIDER builtin BUILTIN_LOCALE 'C.UTF-8'",
      );
    }
  });
}

/** What a server's folder remembers, its lock, and who is to stop the server. */
import { execFileSync } from "node:child_process";
import { createHash, randomBytes } from "node:crypto";
import { existsSync, readFileSync } from "node:fs";
import { link, mkdir, readFile, rename, rm, writeFile } from "node:fs/promises";
import { createServer } from "node:net";
import path from "node:path";
import { isReachable, OUTSIDE, type RunAs } from "./binaries";

type Kept = {
  readonly port: number;
  readonly superuserPassword: string;
  readonly ownerPassword: string;
  /** Where the data directory is when the server's account cannot reach it in the folder. */
  readonly outside: string | null;
};

export type Remembered = Kept & {
  /** The data directory itself. */
  readonly cluster: string;
};

const fileOf = (folder: string) => path.join(folder, "embedded.json");
/** Not written down when it is in the folder, so that the folder may be moved. */
const clusterIn = (folder: string) => path.join(folder, "cluster");

/** What the folder remembers; made at first use. Of two that start at once, one wins and both use its file. */
export async function remember(folder: string, runAs: RunAs): Promise<Remembered> {
  const file = fileOf(folder);
  if (!existsSync(file)) {
    await mkdir(folder, { recursive: true });
    const key = createHash("sha256").update(folder).digest("hex").slice(0, 12);
    const draft = await writeDraft(folder, {
      port: await freePort(),
      superuserPassword: randomBytes(18).toString("hex"),
      ownerPassword: randomBytes(18).toString("hex"),
      outside: isReachable(clusterIn(folder), runAs) ? null : path.join(OUTSIDE, key, "cluster"),
    });
    await link(draft, file).catch((error) => {
      if (error.code !== "EEXIST") throw error;
    });
    await rm(draft);
  }
  const kept: Kept = JSON.parse(await readFile(file, "utf8"));
  return { ...kept, cluster: kept.outside ?? clusterIn(folder) };
}

export async function rememberPort(
  folder: string,
  remembered: Remembered,
  port: number,
): Promise<Remembered> {
  const { cluster, ...kept } = { ...remembered, port };
  await rename(await writeDraft(folder, kept), fileOf(folder));
  return { ...kept, cluster };
}

async function writeDraft(folder: string, kept: Kept): Promise<string> {
  const draft = `${fileOf(folder)}.${process.pid}`;
  await writeFile(draft, JSON.stringify(kept, null, 2), { mode: 0o600 });
  return draft;
}

export async function freePort(): Promise<number> {
  const port = await tryPort(0);
  if (port === null) throw new Error("No port of this machine is free.");
  return port;
}

export async function isFree(port: number): Promise<boolean> {
  return (await tryPort(port)) !== null;
}

/** Listens on a port for a moment (0: any) and answers which it was, or null when it is taken. */
function tryPort(port: number): Promise<number | null> {
  return new Promise((resolve) => {
    const probe = createServer();
    probe.once("error", () => resolve(null));
    probe.listen(port, "127.0.0.1", () => {
      const address = probe.address();
      probe.close(() => resolve(address instanceof Object ? address.port : null));
    });
  });
}

/** Lines of postmaster.pid: process, data directory, start time, port, … Empty when there is none. */
export function readLock(cluster: string): readonly string[] {
  const file = path.join(cluster, "postmaster.pid");
  return existsSync(file) ? readFileSync(file, "utf8").split("\n") : [];
}

/** PostgreSQL itself clears the lock of a dead process, but not when the number now belongs to another program. */
export async function clearStaleLock(cluster: string): Promise<void> {
  const pid = Number(readLock(cluster)[0]);
  if (!pid || !isAlive(pid) || commandOf(pid).includes("postgres")) return;
  await rm(path.join(cluster, "postmaster.pid"), { force: true });
}

function commandOf(pid: number): string {
  try {
    if (process.platform === "linux") return readFileSync(`/proc/${pid}/cmdline`, "utf8");
    return execFileSync("ps", ["-p", String(pid), "-o", "command="]).toString();
  } catch {
    // Unknown: treated as PostgreSQL, whose lock is never taken away.
    return "postgres";
  }
}

export function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error instanceof Error && "code" in error && error.code === "EPERM";
  }
}

/** Decides who stops the server: the process named in the folder while it lives, otherwise this one. */
export async function takeOwnership(folder: string, stopsWithProcess: boolean): Promise<boolean> {
  const file = path.join(folder, "stopped-by.pid");
  const ours = stopsWithProcess ? String(process.pid) : "command";
  for (;;) {
    try {
      // "wx" fails when the file exists: of two processes that come at once, one gets it.
      await writeFile(file, ours, { flag: "wx" });
      return stopsWithProcess;
    } catch (error) {
      if (!(error instanceof Error && "code" in error && error.code === "EEXIST")) throw error;
    }
    const named = await readFile(file, "utf8").catch(() => "");
    if (named === "command") return false;
    if (named === String(process.pid)) return true;
    if (Number(named) > 0 && isAlive(Number(named))) return false;
    await rm(file, { force: true });
  }
}

/** The server no longer has anyone who is to stop it. */
export async function giveUpOwnership(folder: string): Promise<void> {
  await rm(path.join(folder, "stopped-by.pid"), { force: true });
}

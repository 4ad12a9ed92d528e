// Runs on plain Node before anything is installed: puts dependencies and generated code in place.
import { spawnSync } from "node:child_process";
import { existsSync, readFileSync, statSync } from "node:fs";
import path from "node:path";

export const ROOT = path.resolve(import.meta.dirname, "..");

/** Runs a command, showing what it says; throws when it fails. */
export function run(command, args, env = {}) {
  const result = spawnSync(command, args, { cwd: ROOT, stdio: "inherit", env: { ...process.env, ...env } });
  if (result.status !== 0) throw new Error(`${command} ${args.join(" ")} ended with ${result.status ?? result.signal}`);
}

/** Path of a package's command. */
export function bin(name) {
  return path.join(ROOT, "node_modules", ".bin", name);
}

/** Installs what is missing or stale, and generates the database client. */
export function prepare() {
  if (Number(process.versions.node.split(".")[0]) < 20) throw new Error("Node.js 20 or newer is needed.");
  if (installIsStale()) run("npm", ["ci", "--no-audit", "--no-fund"]);
  const client = path.join(ROOT, "lib/db/generated");
  const schema = path.join(ROOT, "prisma/schema.prisma");
  if (!existsSync(client) || statSync(client).mtimeMs < statSync(schema).mtimeMs) run(bin("prisma"), ["generate"]);
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

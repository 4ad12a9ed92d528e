import { spawn, spawnSync } from "node:child_process";
import { chmod, mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { createInterface } from "node:readline";

/** A folder for a server of one test's own, which the server's account can enter. */
export async function makeServerFolder(): Promise<string> {
  const folder = await mkdtemp(path.join(tmpdir(), "dewledger-own-"));
  await chmod(folder, 0o755);
  return folder;
}

export async function removeServerFolder(folder: string): Promise<void> {
  await rm(folder, { recursive: true, force: true });
}

/** The processes of the server of a folder, whoever started them. */
export function processesOf(folder: string): readonly number[] {
  const { stdout } = spawnSync("ps", ["-eo", "pid,args"], { encoding: "utf8" });
  return stdout
    .split("\n")
    .filter((line) => line.includes(`postgres -D ${folder}`))
    .map((line) => Number.parseInt(line, 10));
}

/** Waits until something holds; throws when it takes too long. */
export async function until(
  holds: () => boolean | Promise<boolean>,
  what: string,
  timeoutMs = 30_000,
): Promise<void> {
  const end = Date.now() + timeoutMs;
  while (!(await holds())) {
    if (Date.now() > end) throw new Error(`Waited too long until ${what}.`);
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
}

/** Runs a script of this folder in a process of its own and collects the lines it prints. */
export function runScript(name: string, args: readonly string[], env: Readonly<Record<string, string>> = {}) {
  const script = path.join(import.meta.dirname, name);
  const child = spawn(process.execPath, ["--import", "tsx", script, ...args], {
    env: { ...process.env, ...env },
    stdio: ["pipe", "pipe", "pipe"],
  });
  const lines: string[] = [];
  let complaint = "";
  createInterface({ input: child.stdout }).on("line", (line) => lines.push(line));
  child.stderr.on("data", (chunk) => {
    complaint += chunk;
  });
  const ended = new Promise<void>((resolve) => child.once("close", () => resolve()));
  return {
    lines,
    ended,
    /** Waits for a number of lines; fails with the script's complaint when it ended first. */
    said: (count: number) =>
      until(() => {
        if (lines.length < count && child.exitCode !== null) throw new Error(`${name} ended: ${complaint}`);
        return lines.length >= count;
      }, `${name} said ${count} lines (${complaint})`),
    isRunning: () => child.exitCode === null && child.signalCode === null,
    signal: (signal: NodeJS.Signals) => child.kill(signal),
    closeInput: () => child.stdin.end(),
  };
}

import { spawnSync } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";

/** Ticks of Linux's clock of processes a second. */
const TICKS = 100;

/** Processor time of a process and everything it has started, also what has ended and was waited for, s. Not a number where there is no /proc. */
export function processorSecondsOf(pid: number): number {
  const { stdout } = spawnSync("ps", ["-eo", "pid=,ppid="], { encoding: "utf8" });
  const parents = stdout
    .trim()
    .split("\n")
    .map((line) => line.trim().split(/\s+/).map(Number));
  const family = new Set([pid]);
  for (let before = 0; before < family.size; ) {
    before = family.size;
    for (const [child = 0, parent = 0] of parents) if (family.has(parent)) family.add(child);
  }
  return [...family].reduce((sum, one) => sum + ticksOf(one) / TICKS, 0);
}

function ticksOf(pid: number): number {
  try {
    // The name in brackets may hold anything; user and system time are the 12th and 13th after it, then those of what
    // it has waited for.
    const fields = readFileSync(`/proc/${pid}/stat`, "utf8").split(") ").at(-1)?.split(" ") ?? [];
    return fields.slice(11, 15).reduce((sum, ticks) => sum + Number(ticks), 0);
  } catch {
    // It has ended meanwhile: its parent has its time. Without /proc at all nothing can be told.
    return existsSync("/proc/self/stat") ? 0 : Number.NaN;
  }
}

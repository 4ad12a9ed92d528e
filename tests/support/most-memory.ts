import { readFileSync } from "node:fs";

/**
 * The most memory this process has held since its program began, MB. From /proc where there is one: the figure of `getrusage` begins,
 * on Linux, with what the parent held when it forked.
 */
export function mostMemoryMb(): number {
  try {
    const [, kb] = /^VmHWM:\s+(\d+) kB$/m.exec(readFileSync("/proc/self/status", "utf8")) ?? [];
    if (kb !== undefined) return Number(kb) / 1_024;
  } catch {
    // Not on Linux.
  }
  return process.resourceUsage().maxRSS / 1_024;
}

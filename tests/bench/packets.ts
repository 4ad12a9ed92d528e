import { execFile } from "node:child_process";
import path from "node:path";
import { promisify } from "node:util";
import type { PacketCost } from "./packet-memory";

const MiB = 1024 * 1024;
const script = path.join(import.meta.dirname, "packet-memory.ts");

/**
 * A packet of ten pages and one with 40 photographs, in lines for the bench: aims 500 ms warm, and 5 s under 512 MB of
 * the process that makes them one after the other.
 */
export async function packetLines(mark: (met: boolean) => string): Promise<readonly string[]> {
  const { stdout } = await promisify(execFile)(process.execPath, ["--import", "tsx", script]);
  const { pages, fastestMs, photosMs, photosBytes, mostMiB } = JSON.parse(stdout) as PacketCost;
  return [
    `packet of ${pages} pages: ${fastestMs.toFixed(0)} ms warm; aim ≤ 500 ms for ten ${mark((10 * fastestMs) / pages <= 500)}`,
    `packet with 40 photographs: ${(photosMs / 1_000).toFixed(1)} s, ${(photosBytes / MiB).toFixed(1)} MiB; aim ≤ 5 s ${mark(photosMs <= 5_000)}; the process never held more than ${mostMiB.toFixed(0)} MiB; aim ≤ 512 MiB ${mark(mostMiB <= 512)}`,
  ];
}

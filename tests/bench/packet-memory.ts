/**
 * A packet of ten pages, again and again, and then one with 40 photographs, in a process of its own, so that its memory
 * is that of the packets and of nothing else. Prints what it took as JSON.
 */

import type { StageKey } from "@/lib/domain/stages";
import { pagesOf, renderView } from "@/lib/reports/render-view";
import { filePacketView } from "@/lib/services/packet-views/file";
import { mostMemoryMb } from "../support/most-memory";
import { packetPartsOf, packetPhotosOf } from "../support/packet-parts";

export type PacketCost = {
  readonly pages: number;
  readonly fastestMs: number;
  readonly photosMs: number;
  readonly photosBytes: number;
  readonly mostMiB: number;
};

const WARM_TURNS = 6;
/** Without these a file packet has about ten pages. */
const LEFT_OUT: readonly StageKey[] = ["startup_record", "humidity_review", "control_setup", "airflow_setup"];

const photos = await packetPhotosOf(40);
const plain = filePacketView(packetPartsOf({}, LEFT_OUT));
let fastestMs = Number.POSITIVE_INFINITY;
let pages = 0;
for (let turn = 0; turn < WARM_TURNS; turn += 1) {
  const begun = performance.now();
  const bytes = await renderView(plain);
  fastestMs = Math.min(fastestMs, performance.now() - begun);
  pages = pagesOf(bytes);
}
const begun = performance.now();
const bytes = await renderView(filePacketView(packetPartsOf({ photos })));
const cost: PacketCost = {
  pages,
  fastestMs,
  photosMs: performance.now() - begun,
  photosBytes: bytes.length,
  mostMiB: mostMemoryMb(),
};
process.stdout.write(JSON.stringify(cost));

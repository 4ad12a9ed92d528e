import { renderView } from "@/lib/reports/render-view";
import { filePacketView } from "@/lib/services/packet-views/file";
import { FULL_JOB } from "../support/full-job";
import { packetPartsOf, packetPhotosOf } from "../support/packet-parts";

const WARM_TURNS = 6;
const PAGE = /\/Type\s*\/Page\b/g;
const MiB = 1024 * 1024;

/**
 * A file packet without and with 40 photographs, in lines for the bench: aims 500 ms for ten pages and 5 s under
 * 512 MB. The yardstick is a page's share of the time, so that a packet of other length is judged alike.
 */
export async function packetLines(mark: (met: boolean) => string): Promise<readonly string[]> {
  const plain = filePacketView(packetPartsOf({}, ["humidity_review"], FULL_JOB));
  let fastest = Number.POSITIVE_INFINITY;
  let pages = 0;
  for (let turn = 0; turn < WARM_TURNS; turn += 1) {
    const begun = performance.now();
    const bytes = await renderView(plain);
    fastest = Math.min(fastest, performance.now() - begun);
    pages = Buffer.from(bytes).toString("latin1").match(PAGE)?.length ?? 1;
  }
  const tenPages = (10 * fastest) / pages;
  const photos = await packetPhotosOf(40);
  const begun = performance.now();
  const bytes = await renderView(filePacketView(packetPartsOf({ photos })));
  const withPhotos = performance.now() - begun;
  const peakMiB = process.resourceUsage().maxRSS / 1024;
  return [
    `packet of ${pages} pages: ${fastest.toFixed(0)} ms warm, ${tenPages.toFixed(0)} ms for ten; aim ≤ 500 ms ${mark(tenPages <= 500)}`,
    `packet with 40 photographs: ${(withPhotos / 1_000).toFixed(1)} s, ${(bytes.length / MiB).toFixed(1)} MiB; aim ≤ 5 s ${mark(withPhotos <= 5_000)}; the process never held more than ${peakMiB.toFixed(0)} MiB; aim ≤ 512 MiB ${mark(peakMiB <= 512)}`,
  ];
}

import { createHash } from "node:crypto";
import { expect, test } from "vitest";
import { renderView } from "@/lib/reports/render-view";
import { RENDERER_VERSION } from "@/lib/reports/renderer";
import { homeownerPacketView } from "@/lib/services/homeowner-packet-view";
import { crewPacketView } from "@/lib/services/packet-views/crew";
import { reviewPacketView } from "@/lib/services/packet-views/review";
import { packetPartsOf } from "../support/packet-parts";
import { readPdf } from "./read-pdf";

/**
 * What each version of the renderer prints of the same records, as the words and places that a reader finds: the bytes
 * themselves depend on the machine's compressor. A change of rules or sentences of the job changes it too.
 *
 * When this fails: raise `RENDERER_VERSION`, and write the new fingerprint beside it.
 */
const PRINTED = { version: 5, fingerprint: "bb2f04688b3210f0" } as const;

test("a renderer that prints otherwise has another version", async () => {
  const parts = packetPartsOf();
  const hash = createHash("sha256");
  for (const view of [
    homeownerPacketView(parts, "es", null),
    crewPacketView(parts),
    reviewPacketView(parts),
  ]) {
    for (const { placed } of (await readPdf(await renderView(view))).pages) {
      const words = placed.map(({ text, left, top }) => `${text} ${left.toFixed(1)} ${top.toFixed(1)}`);
      hash.update(words.join("\n"));
    }
  }
  expect({ version: RENDERER_VERSION, fingerprint: hash.digest("hex").slice(0, 16) }).toEqual(PRINTED);
});

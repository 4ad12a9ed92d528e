import { clean } from "./clean-view";
import { HomeownerDocument } from "./homeowner/document";
import type { HomeownerPacketView } from "./homeowner/view";
import { renderPdf } from "./render-pdf";

/**
 * The homeowner packet as PDF bytes. The same view gives the same bytes.
 *
 * @param view - Everything to print, finished: this computes nothing.
 */
export async function renderHomeownerPacket(view: HomeownerPacketView): Promise<Uint8Array> {
  return renderPdf(HomeownerDocument({ view: await clean(view) }));
}

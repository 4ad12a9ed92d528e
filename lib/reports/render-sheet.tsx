import { clean } from "./clean-view";
import { renderPdf } from "./render-pdf";
import { SheetDocument } from "./sheet/document";
import type { SheetView } from "./sheet/view";

/**
 * A working paper as PDF bytes. The same view gives the same bytes.
 *
 * @param view - Everything to print, finished: this computes nothing.
 */
export async function renderSheet(view: SheetView): Promise<Uint8Array> {
  return renderPdf(SheetDocument({ view: await clean(view) }));
}

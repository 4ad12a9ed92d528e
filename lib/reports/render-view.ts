import type { DocumentProps } from "@react-pdf/renderer";
import type { ReactElement } from "react";
import { clean } from "./clean-view";
import { HomeownerDocument } from "./homeowner/document";
import type { HomeownerPacketView } from "./homeowner/view";
import { renderPdf } from "./render-pdf";
import { SheetDocument } from "./sheet/document";
import type { SheetView } from "./sheet/view";

/** Everything one packet prints, of either kind, finished: printing computes nothing. */
export type PrintedView = HomeownerPacketView | SheetView;

/** A packet as PDF bytes. The same view gives the same bytes. */
export async function renderView(view: PrintedView): Promise<Uint8Array> {
  return renderPdf(await documentOf(view));
}

/** A packet as a document, its texts cleaned for print. */
export async function documentOf(view: PrintedView): Promise<ReactElement<DocumentProps>> {
  return "sections" in view
    ? SheetDocument({ view: await clean(view) })
    : HomeownerDocument({ view: await clean(view) });
}

/** The page objects of a file; the renderer writes them uncompressed. */
export function pagesOf(bytes: Uint8Array): number {
  return (
    Buffer.from(bytes)
      .toString("latin1")
      .match(/\/Type\s*\/Page\b/g)?.length ?? 0
  );
}

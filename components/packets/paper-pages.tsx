"use client";

import { useEffect, useRef, useState } from "react";

type Props = {
  readonly pdf: ArrayBuffer;
  readonly label: string;
  /** Shows the first and the last page only. */
  readonly firstAndLast?: boolean;
};

/** The pages of a PDF as pictures. The reader is loaded only where it is used. */
export function PaperPages({ pdf, label, firstAndLast = false }: Props) {
  const place = useRef<HTMLDivElement>(null);
  const [failed, setFailed] = useState(false);

  useEffect(() => {
    let left = false;
    drawn(pdf, firstAndLast)
      .then((pages) => {
        if (left) return;
        place.current?.replaceChildren(...pages);
        setFailed(false);
      })
      .catch(() => {
        if (!left) setFailed(true);
      });
    return () => {
      left = true;
    };
  }, [pdf, firstAndLast]);

  return (
    <>
      {failed ? (
        <p className="text-sm text-short">The pages cannot be shown here. Open the file instead.</p>
      ) : null}
      <div ref={place} role="img" aria-label={label} className="grid gap-3" />
    </>
  );
}

/** Wide enough to stay sharp at twice the width of the column. */
const WIDTH_PX = 900;

async function drawn(pdf: ArrayBuffer, firstAndLast: boolean): Promise<readonly HTMLCanvasElement[]> {
  const { getDocument, GlobalWorkerOptions } = await import("pdfjs-dist");
  GlobalWorkerOptions.workerPort ??= new Worker(
    new URL("pdfjs-dist/build/pdf.worker.min.mjs", import.meta.url),
    { type: "module" },
  );
  // The reader takes the bytes for itself, and they may be shown again.
  const task = getDocument({ data: pdf.slice(0), isEvalSupported: false });
  const file = await task.promise;
  const all = Array.from({ length: file.numPages }, (_, at) => at + 1);
  const wanted = firstAndLast ? [...new Set([1, file.numPages])] : all;
  const pages: HTMLCanvasElement[] = [];
  for (const number of wanted) {
    const page = await file.getPage(number);
    const viewport = page.getViewport({ scale: WIDTH_PX / page.getViewport({ scale: 1 }).width });
    const canvas = document.createElement("canvas");
    canvas.width = viewport.width;
    canvas.height = viewport.height;
    canvas.className = "w-full border border-rule bg-white";
    await page.render({ canvas, viewport }).promise;
    pages.push(canvas);
  }
  await task.destroy();
  return pages;
}

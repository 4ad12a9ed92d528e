"use client";

import { type PointerEvent, type ReactNode, useRef, useState } from "react";
import { LIVED_SIDES } from "@/lib/charts/lived-chart";

/** Shorter than this is a click, not a drag, px. */
const LEAST_PX = 8;

type Dragged = { readonly svg: SVGSVGElement; readonly fromX: number; readonly toX: number };

/** A chart in which a span is chosen by dragging across it, with mouse, pen or finger. Escape gives up. */
export function ZoomByDrag({
  onChosen,
  children,
}: {
  /** From and to as shares of the plot's width, 0 to 1. */
  readonly onChosen: (from: number, to: number) => void;
  readonly children: ReactNode;
}) {
  const box = useRef<HTMLDivElement>(null);
  const [drag, setDrag] = useState<Dragged | null>(null);

  const begin = (event: PointerEvent) => {
    const svg = event.target instanceof Element ? event.target.closest("svg") : null;
    if (event.button !== 0 || !(svg instanceof SVGSVGElement)) return;
    event.preventDefault();
    // Keys go to the chart from here on, Escape among them.
    box.current?.focus({ preventScroll: true });
    event.currentTarget.setPointerCapture(event.pointerId);
    setDrag({ svg, fromX: event.clientX, toX: event.clientX });
  };
  const move = (event: PointerEvent) => {
    if (drag) setDrag({ ...drag, toX: event.clientX });
  };
  const end = (event: PointerEvent) => {
    setDrag(null);
    if (!drag || Math.abs(event.clientX - drag.fromX) < LEAST_PX) return;
    const shares = [drag.fromX, event.clientX].map((x) => shareAt(drag.svg, x)).sort((a, b) => a - b);
    const [from = 0, to = 1] = shares;
    if (to > from) onChosen(from, to);
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: dragging is a second way; the buttons and dates above are the first
    <div
      ref={box}
      tabIndex={-1}
      className="chart-drag relative outline-none"
      onPointerDown={begin}
      onPointerMove={move}
      onPointerUp={end}
      onPointerCancel={() => setDrag(null)}
      onKeyDown={(event) => event.key === "Escape" && setDrag(null)}
    >
      {children}
      {drag && box.current ? (
        <div aria-hidden="true" className="chart-span" style={place(drag, box.current)} />
      ) : null}
    </div>
  );
}

/** Where a point of the screen lies along the plot, 0 to 1. */
function shareAt(svg: SVGSVGElement, clientX: number): number {
  const { left, width } = svg.getBoundingClientRect();
  const units = svg.viewBox.baseVal.width;
  const at = ((clientX - left) / width) * units;
  const share = (at - LIVED_SIDES.left) / (units - LIVED_SIDES.left - LIVED_SIDES.right);
  return Math.min(1, Math.max(0, share));
}

function place({ svg, fromX, toX }: Dragged, box: HTMLElement) {
  const [outer, inner] = [box.getBoundingClientRect(), svg.getBoundingClientRect()];
  const within = (x: number) => Math.min(inner.right, Math.max(inner.left, x)) - outer.left;
  const [from, to] = [within(Math.min(fromX, toX)), within(Math.max(fromX, toX))];
  return { left: from, width: to - from, top: inner.top - outer.top, height: inner.height };
}

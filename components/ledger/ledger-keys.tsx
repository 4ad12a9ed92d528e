"use client";

import type { KeyboardEvent, ReactNode } from "react";

/** Lets the arrow keys walk from entry to entry; the tab key works as everywhere. */
export function LedgerKeys({ children }: { readonly children: ReactNode }) {
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: it only hears keys that its links did not use
    <div onKeyDown={moveFocus}>{children}</div>
  );
}

function moveFocus(event: KeyboardEvent<HTMLDivElement>) {
  if (event.altKey || event.ctrlKey || event.metaKey || event.shiftKey) return;
  const from = event.target instanceof Element ? event.target.closest<HTMLElement>("a[data-column]") : null;
  if (from === null) return;
  const to = neighbour(event.currentTarget, from, event.key);
  if (to === undefined) return;
  event.preventDefault();
  to.focus();
}

function neighbour(table: Element, from: HTMLElement, key: string): HTMLElement | undefined {
  const links = Array.from(table.querySelectorAll<HTMLElement>("a[data-column]"));
  const inRow = links.filter((link) => link.closest("tr") === from.closest("tr"));
  const inColumn = links.filter((link) => link.dataset.column === from.dataset.column);
  const step = (list: readonly HTMLElement[], by: number) => list[list.indexOf(from) + by];
  switch (key) {
    case "ArrowRight":
      return step(inRow, 1);
    case "ArrowLeft":
      return step(inRow, -1);
    case "ArrowDown":
      return step(inColumn, 1);
    case "ArrowUp":
      return step(inColumn, -1);
    default:
      return undefined;
  }
}

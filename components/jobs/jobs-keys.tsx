"use client";

import { useEffect } from "react";

const JOB_LINK = "a[data-job]";

/** The table by keyboard, and the line that says how. */
export function JobsKeys() {
  useEffect(() => {
    document.addEventListener("keydown", onKey);
    return () => document.removeEventListener("keydown", onKey);
  }, []);
  return (
    <p className="no-print mb-2 text-sm text-muted max-sm:hidden">
      Keys: <kbd>/</kbd> search, <kbd>↓</kbd> <kbd>↑</kbd> from job to job, <kbd>Enter</kbd> opens,{" "}
      <kbd>e</kbd> changes tech and date
    </p>
  );
}

function onKey(event: KeyboardEvent): void {
  if (event.ctrlKey || event.metaKey || event.altKey || isTyping(event.target)) return;
  if (event.key === "/") {
    event.preventDefault();
    document.querySelector<HTMLInputElement>('input[name="search"]')?.focus();
  } else if (event.key === "ArrowDown" || event.key === "ArrowUp") {
    if (moveBy(event.key === "ArrowDown" ? 1 : -1)) event.preventDefault();
  } else if (event.key === "e") {
    const row = document.activeElement?.closest("tr");
    const change = row?.querySelector<HTMLButtonElement>("button[data-plan]");
    if (change) {
      event.preventDefault();
      change.click();
    }
  }
}

/** Moves to the next job; from anywhere else onto the first. */
function moveBy(step: 1 | -1): boolean {
  const links = [...document.querySelectorAll<HTMLAnchorElement>(JOB_LINK)];
  const row = document.activeElement?.closest("tr");
  const at = links.findIndex((link) => row?.contains(link));
  const next = links[at === -1 ? 0 : at + step];
  next?.focus();
  return next !== undefined;
}

function isTyping(target: EventTarget | null): boolean {
  return (
    target instanceof HTMLElement && target.closest("input, select, textarea, [contenteditable]") !== null
  );
}

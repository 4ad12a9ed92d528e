"use client";

import { useEffect } from "react";

/**
 * Puts the keyboard where the next answer goes, each time `step` changes.
 *
 * @param to - A selector of the page; where nothing matches the focus stays.
 */
export function TakeFocus({ to, step }: { readonly to: string; readonly step: string }) {
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new step asks again for the same place
  useEffect(() => {
    document.querySelector<HTMLElement>(to)?.focus();
  }, [to, step]);
  return null;
}

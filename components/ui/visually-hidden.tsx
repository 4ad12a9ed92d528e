import type { ReactNode } from "react";

/** Words for a screen reader where the picture says it to everyone else. */
export function VisuallyHidden({ children }: { readonly children: ReactNode }) {
  return <span className="sr-only">{children}</span>;
}

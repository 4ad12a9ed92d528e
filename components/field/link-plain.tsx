import type { ReactNode } from "react";

/** A link that leads out of the field screens, with a target for a thumb. */
export function LinkPlain({ href, children }: { readonly href: string; readonly children: ReactNode }) {
  return (
    <a href={href} className="button button-secondary">
      {children}
    </a>
  );
}

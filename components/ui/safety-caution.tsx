import { TriangleAlert } from "lucide-react";
import type { ReactNode } from "react";

/** A short caution where the work can hurt someone. It names the danger and who decides. */
export function SafetyCaution({ children }: { readonly children: ReactNode }) {
  return (
    <div role="note" className="flex gap-2.5 border-l-4 border-caution bg-caution-tint px-3 py-2 text-sm">
      <TriangleAlert aria-hidden="true" className="mt-0.5 size-4.5 shrink-0 text-caution" />
      <div className="min-w-0">
        <strong className="text-caution">Caution. </strong>
        {children}
      </div>
    </div>
  );
}

import type { ReactNode } from "react";

/** A group of fields under one heading, side by side where there is room. */
export function FormSection({
  title,
  children,
  intro,
}: {
  readonly title: string;
  readonly intro?: ReactNode;
  readonly children: ReactNode;
}) {
  return (
    <fieldset className="min-w-0 border-t border-rule pt-3 first:border-t-0 first:pt-0">
      <legend className="float-left mb-2 w-full font-semibold">{title}</legend>
      {intro === undefined ? null : <div className="clear-both mb-3 text-sm text-muted">{intro}</div>}
      <div className="clear-both grid grid-cols-[repeat(auto-fill,minmax(min(100%,15rem),1fr))] gap-x-5 gap-y-4">
        {children}
      </div>
    </fieldset>
  );
}

/** The buttons that end a form, with the save state beside them. */
export function FormActions({ children }: { readonly children: ReactNode }) {
  return (
    <div className="no-print mt-5 flex flex-wrap items-center gap-3 border-t border-rule pt-4">
      {children}
    </div>
  );
}

import { useEffect, useRef } from "react";
import { Notice } from "../ui/notice";
import { ErrorSummary } from "./error-summary";
import type { SentForm } from "./use-sent-form";

/** Why a form was not accepted: field by field where fields are to blame, otherwise in one sentence. */
export function Refusal({ form, title }: { readonly form: SentForm; readonly title?: string }) {
  const box = useRef<HTMLDivElement>(null);
  useEffect(() => {
    // The button stands below a long form; what it was refused for must not stay out of sight above it.
    if (form.state === "refused") box.current?.focus();
  }, [form]);
  if (form.state !== "refused") return null;
  return (
    <div ref={box} tabIndex={-1} className="scroll-mt-4 outline-none">
      {form.problems.length === 0 ? (
        <Notice kind="problem" title={form.message} />
      ) : (
        <ErrorSummary problems={form.problems} {...(title === undefined ? {} : { title })} />
      )}
    </div>
  );
}

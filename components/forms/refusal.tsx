import { Notice } from "../ui/notice";
import { ErrorSummary } from "./error-summary";
import type { SentForm } from "./use-sent-form";

/** Why a form was not accepted: field by field where fields are to blame, otherwise in one sentence. */
export function Refusal({ form, title }: { readonly form: SentForm; readonly title?: string }) {
  if (form.state !== "refused") return null;
  if (form.problems.length === 0) return <Notice kind="problem" title={form.message} />;
  return <ErrorSummary problems={form.problems} {...(title === undefined ? {} : { title })} />;
}

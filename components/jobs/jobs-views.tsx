"use client";

import { useRouter } from "next/navigation";
import { ActionForm } from "@/components/forms/action-form";
import { problemOf } from "@/components/forms/error-summary";
import { Refusal } from "@/components/forms/refusal";
import { type Answer, problemsOf, useSentForm } from "@/components/forms/use-sent-form";
import { Button, TextLink } from "@/components/ui/button";
import { CheckField } from "@/components/ui/choice-fields";
import { SubmitButton } from "@/components/ui/submit-button";
import { TextField } from "@/components/ui/text-field";
import type { SavedView } from "@/lib/domain/saved-views";

type Props = {
  readonly views: readonly SavedView[];
  /** The question as it stands in the address now. */
  readonly question: string;
  readonly keep: (input: unknown) => Promise<Answer>;
  readonly drop: (input: unknown) => Promise<Answer>;
};

/** Questions kept by name: one press shows them; the present one can be kept. */
export function JobsViews({ views, question, keep, drop }: Props) {
  const router = useRouter();
  const [sent, send, busy] = useSentForm(
    (form) => keep({ name: form.get("name"), query: question, shared: form.get("shared") === "yes" }),
    () => router.refresh(),
  );
  return (
    <div className="no-print mb-3 flex flex-wrap items-start gap-x-4 gap-y-1 text-sm">
      {views.length === 0 ? null : (
        <ul aria-label="Saved views" className="flex flex-wrap gap-x-4">
          {views.map((view) => (
            <li key={view.id} className="flex items-center">
              <TextLink
                href={`/jobs?${view.query}`}
                aria-current={view.query === question ? "page" : undefined}
                className="py-2"
              >
                {view.name}
              </TextLink>
              {view.own ? (
                <Button
                  variant="quiet"
                  aria-label={`Remove the view ${view.name}`}
                  onClick={async () => {
                    await drop({ viewId: view.id });
                    router.refresh();
                  }}
                >
                  ×
                </Button>
              ) : null}
            </li>
          ))}
        </ul>
      )}
      <details>
        <summary className="cursor-pointer py-2 font-semibold">Save this view</summary>
        <ActionForm action={send} className="flex flex-wrap items-end gap-3 pb-2">
          <Refusal form={sent} title="Not saved yet" />
          <TextField name="name" label="Name of the view" error={problemOf(problemsOf(sent), "name")} />
          <CheckField name="shared" label="For everyone here" />
          <SubmitButton busy={busy} variant="secondary">
            Save the view
          </SubmitButton>
        </ActionForm>
      </details>
    </div>
  );
}

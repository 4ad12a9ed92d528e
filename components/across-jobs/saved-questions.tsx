"use client";

import { ActionForm } from "@/components/forms/action-form";
import { problemOf } from "@/components/forms/error-summary";
import { Refusal } from "@/components/forms/refusal";
import { type Answer, problemsOf, useSentForm } from "@/components/forms/use-sent-form";
import { LinkButton } from "@/components/ui/button";
import { SubmitButton } from "@/components/ui/submit-button";
import { TextField } from "@/components/ui/text-field";
import type { SavedView } from "@/lib/domain/saved-views";

type Props = {
  readonly saved: readonly SavedView[];
  /** The question as it stands in the address. */
  readonly query: string;
  readonly save: (input: unknown) => Promise<Answer>;
  readonly remove: (input: unknown) => Promise<Answer>;
};

/** Questions kept by name, and a place to keep the one on screen. */
export function SavedQuestions({ saved, query, save, remove }: Props) {
  const [sent, submit, busy] = useSentForm((form) => save({ name: form.get("name"), query, shared: false }));
  return (
    <section aria-labelledby="saved-questions" className="no-print grid gap-2">
      <h2 id="saved-questions" className="text-lg font-semibold">
        Kept questions
      </h2>
      {saved.length === 0 ? <p className="text-sm text-muted">None yet.</p> : null}
      <ul className="grid gap-1">
        {saved.map((view) => (
          <SavedQuestion key={view.id} view={view} remove={remove} />
        ))}
      </ul>
      <ActionForm action={submit} className="flex max-w-xl flex-wrap items-end gap-3">
        <Refusal form={sent} title="Not kept yet" />
        <TextField
          name="name"
          label="Keep this question as"
          autoComplete="off"
          maxLength={80}
          error={problemOf(problemsOf(sent), "name")}
        />
        <SubmitButton busy={busy} variant="secondary">
          Keep
        </SubmitButton>
      </ActionForm>
    </section>
  );
}

function SavedQuestion({ view, remove }: { readonly view: SavedView; readonly remove: Props["remove"] }) {
  const [sent, submit, busy] = useSentForm(() => remove({ viewId: view.id }));
  return (
    <li className="flex flex-wrap items-center gap-3">
      <LinkButton variant="quiet" href={`/across-jobs?${view.query}`}>
        {view.name}
      </LinkButton>
      {view.own ? (
        <ActionForm action={submit}>
          <Refusal form={sent} title="Not removed" />
          <SubmitButton busy={busy} variant="quiet">
            Remove<span className="sr-only"> {view.name}</span>
          </SubmitButton>
        </ActionForm>
      ) : null}
    </li>
  );
}

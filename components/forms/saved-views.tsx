"use client";

import { ActionForm } from "@/components/forms/action-form";
import { problemOf } from "@/components/forms/error-summary";
import { Refusal } from "@/components/forms/refusal";
import { type Answer, problemsOf, useSentForm } from "@/components/forms/use-sent-form";
import { TextLink } from "@/components/ui/button";
import { CheckField } from "@/components/ui/choice-fields";
import { SubmitButton } from "@/components/ui/submit-button";
import { TextField } from "@/components/ui/text-field";
import type { SavedView, SavedViewScreen } from "@/lib/domain/saved-views";

type Door = (input: unknown) => Promise<Answer>;
/** What each screen calls its kept questions, and whether one can be kept for the whole company. */
const SCREENS = {
  jobs: {
    list: "Saved views",
    keep: "Save this view",
    name: "Name of the view",
    button: "Save the view",
    mayShare: true,
  },
  "across-jobs": {
    list: "Kept questions",
    keep: "Keep this question",
    name: "Keep this question as",
    button: "Keep",
    mayShare: false,
  },
} as const satisfies Readonly<Record<SavedViewScreen, object>>;

type Props = {
  readonly screen: SavedViewScreen;
  readonly views: readonly SavedView[];
  /** The question as it stands in the address now. */
  readonly question: string;
  readonly keep: Door;
  readonly drop: Door;
};

/** Questions kept by name: one press shows them; the present one can be kept. */
export function SavedViews({ screen, views, question, keep, drop }: Props) {
  const words = SCREENS[screen];
  const [sent, send, busy] = useSentForm((form) =>
    keep({ name: form.get("name"), query: question, shared: form.get("shared") === "yes" }),
  );
  return (
    <div className="no-print mb-3 flex flex-wrap items-start gap-x-4 gap-y-1 text-sm">
      {views.length === 0 ? null : (
        <ul aria-label={words.list} className="flex flex-wrap gap-x-4">
          {views.map((view) => (
            <KeptView
              key={view.id}
              href={`/${screen}?${view.query}`}
              current={view.query === question}
              view={view}
              drop={drop}
            />
          ))}
        </ul>
      )}
      <details>
        <summary className="cursor-pointer py-2 font-semibold">{words.keep}</summary>
        <ActionForm action={send} className="flex flex-wrap items-end gap-3 pb-2">
          <Refusal form={sent} title="Not saved yet" />
          <TextField
            name="name"
            label={words.name}
            autoComplete="off"
            maxLength={80}
            error={problemOf(problemsOf(sent), "name")}
          />
          {words.mayShare ? <CheckField name="shared" label="For everyone here" /> : null}
          <SubmitButton busy={busy} variant="secondary">
            {words.button}
          </SubmitButton>
        </ActionForm>
      </details>
    </div>
  );
}

function KeptView(props: {
  readonly href: string;
  readonly current: boolean;
  readonly view: SavedView;
  readonly drop: Door;
}) {
  const { href, current, view, drop } = props;
  const [sent, submit, busy] = useSentForm(() => drop({ viewId: view.id }));
  return (
    <li className="flex flex-wrap items-center">
      <TextLink href={href} aria-current={current ? "page" : undefined} className="py-2">
        {view.name}
      </TextLink>
      {view.own ? (
        <ActionForm action={submit}>
          <Refusal form={sent} title="Not removed" />
          <SubmitButton busy={busy} busyText="…" variant="quiet" aria-label={`Remove the view ${view.name}`}>
            ×
          </SubmitButton>
        </ActionForm>
      ) : null}
    </li>
  );
}

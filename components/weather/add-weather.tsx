"use client";

import { useRouter } from "next/navigation";
import { useActionState } from "react";
import { ActionForm } from "@/components/forms/action-form";
import { ErrorSummary, problemOf } from "@/components/forms/error-summary";
import { Card } from "@/components/ui/card";
import { Notice } from "@/components/ui/notice";
import { SubmitButton } from "@/components/ui/submit-button";
import { TextField } from "@/components/ui/text-field";
import type { FieldProblem } from "@/lib/domain/problems";

type State = { readonly done: boolean; readonly problems: readonly FieldProblem[] };
const BEGIN: State = { done: false, problems: [] };

/** Adds a weather year to the company's list. */
export function AddWeather() {
  const router = useRouter();
  const [{ done, problems }, send, busy] = useActionState(
    async (_: State, form: FormData): Promise<State> => {
      const found = await upload(form);
      if (found.length === 0) router.refresh();
      return { done: found.length === 0, problems: found };
    },
    BEGIN,
  );
  const file = problemOf(problems, "file");
  return (
    <Card title="Add a weather year">
      <ActionForm action={send} className="grid gap-4">
        <ErrorSummary problems={problems} />
        {done ? <Notice kind="done" title="Added. It stands in the list above." /> : null}
        <TextField
          name="name"
          label="Name"
          hint="The place and the years it stands for."
          error={problemOf(problems, "name")}
          autoComplete="off"
        />
        <TextField
          name="sourceNote"
          label="Source"
          hint="Who made it, and on which terms it may be used. Shown wherever it is used."
          error={problemOf(problems, "sourceNote")}
          autoComplete="off"
        />
        <div className="grid gap-1">
          <label htmlFor="field-file" className="font-semibold">
            EPW file
          </label>
          <input
            id="field-file"
            name="file"
            type="file"
            accept=".epw"
            aria-describedby="weather-file-hint"
            aria-invalid={file !== undefined}
            className="control max-w-full"
          />
          <p
            id="weather-file-hint"
            className={file === undefined ? "text-sm text-muted" : "text-sm text-short"}
          >
            {file ?? "One year of hours, at most 10 MB."}
          </p>
        </div>
        <div>
          <SubmitButton busy={busy} busyText="Reading the year…">
            Add
          </SubmitButton>
        </div>
      </ActionForm>
    </Card>
  );
}

async function upload(form: FormData): Promise<readonly FieldProblem[]> {
  try {
    const answer = await fetch("/api/weather", { method: "POST", body: form });
    if (answer.ok) return [];
    const { message, fields = [] } = await answer.json();
    return fields.length > 0 ? fields : [{ field: "file", message }];
  } catch {
    return [
      { field: "file", message: "The file did not reach the server. Try again when the connection is back." },
    ];
  }
}

"use client";

import { useRouter } from "next/navigation";
import { useState } from "react";
import { ActionForm } from "@/components/forms/action-form";
import { ErrorSummary, problemOf } from "@/components/forms/error-summary";
import { FieldFrame, fieldIds } from "@/components/forms/field-frame";
import { Notice } from "@/components/ui/notice";
import { SubmitButton } from "@/components/ui/submit-button";
import { TextField } from "@/components/ui/text-field";
import type { FieldProblem } from "@/lib/domain/problems";
import { LogMappingFields, mappingFrom } from "./log-mapping-fields";

type Refusal = {
  readonly message: string;
  readonly fields: readonly FieldProblem[];
  readonly headings: readonly string[];
};

/** Sends a log file. When its columns cannot be told by their headings, asks which is which. */
export function LogUpload({ jobId }: { readonly jobId: string }) {
  const router = useRouter();
  const [busy, setBusy] = useState(false);
  const [refusal, setRefusal] = useState<Refusal | null>(null);
  const [done, setDone] = useState<string | null>(null);
  const problems = refusal?.fields ?? [];
  const fileProps = {
    name: "file",
    label: "Log file (CSV)",
    hint: "Five-minute rows or so, with indoor temperature and humidity; at most 60 MB.",
    error: problemOf(problems, "file"),
  };

  const send = async (form: FormData) => {
    setBusy(true);
    setDone(null);
    const mapping = mappingFrom(form);
    if (mapping) form.set("mapping", JSON.stringify(mapping));
    const answer = await upload(jobId, form);
    setBusy(false);
    if ("rowsKept" in answer) {
      setRefusal(null);
      setDone(
        `${answer.rowsKept.toLocaleString("en-US")} rows imported, ${answer.rowsRefused} refused. Choose this log in the record below.`,
      );
      router.refresh();
    } else setRefusal(answer);
  };

  return (
    <ActionForm action={send} className="grid max-w-3xl gap-3 border-t border-rule pt-4">
      <h3 className="font-semibold">Add a log</h3>
      {done ? <Notice kind="done" title={done} /> : null}
      <ErrorSummary title="Not imported yet" problems={problems} />
      {refusal && problems.length === 0 ? <Notice kind="problem" title={refusal.message} /> : null}
      <FieldFrame {...fileProps}>
        <input
          type="file"
          name="file"
          accept=".csv,.tsv,.txt,text/csv"
          id={fieldIds(fileProps).input}
          className="control"
          aria-describedby={fieldIds(fileProps).describedBy}
        />
      </FieldFrame>
      <TextField
        name="sourceName"
        label="Logger"
        hint="The same name next time, and its columns are remembered."
        defaultValue="Hall sensor"
        error={problemOf(problems, "sourceName")}
      />
      {refusal && refusal.headings.length > 0 ? <LogMappingFields headings={refusal.headings} /> : null}
      <SubmitButton busy={busy} busyText="Reading…" variant="secondary">
        Import
      </SubmitButton>
    </ActionForm>
  );
}

async function upload(
  jobId: string,
  form: FormData,
): Promise<{ rowsKept: number; rowsRefused: number } | Refusal> {
  try {
    const response = await fetch(`/api/jobs/${jobId}/logs`, { method: "POST", body: form });
    const answer = await response.json();
    if (response.ok) return answer;
    return { message: answer.message, fields: answer.fields ?? [], headings: answer.details?.headings ?? [] };
  } catch {
    return {
      message: "The file did not reach the server. Try again when the connection is back.",
      fields: [],
      headings: [],
    };
  }
}

"use client";

import { useActionState } from "react";
import { ActionForm } from "@/components/forms/action-form";
import { Card } from "@/components/ui/card";
import type { Choice } from "@/components/ui/choice-fields";
import { Notice } from "@/components/ui/notice";
import { SubmitButton } from "@/components/ui/submit-button";
import { DateField } from "@/components/ui/text-field";
import type { Job } from "@/lib/domain/jobs";
import { AssignedPeople } from "./assigned-people";

type Answer = { readonly ok: true } | { readonly ok: false; readonly message: string };
type Props = {
  readonly job: Job;
  readonly techs: readonly Choice[];
  readonly schedule: (input: unknown) => Promise<Answer>;
};

/** Who goes, and when. */
export function SchedulePanel({ job, techs, schedule }: Props) {
  const [answer, send, busy] = useActionState(
    (_: Answer | null, form: FormData) =>
      schedule({
        jobId: job.id,
        expectedVersion: job.version,
        startupDue: String(form.get("startupDue")),
        reviewDue: String(form.get("reviewDue")),
        techIds: form.getAll("techIds").map(String),
      }),
    null,
  );
  const assigned = job.techs.map((tech) => tech.userId as string);
  return (
    <Card title="Assign and schedule">
      <ActionForm action={send} className="grid gap-3">
        {answer?.ok ? <Notice kind="done" title="Saved." /> : null}
        {answer && !answer.ok ? <Notice kind="problem" title={answer.message} /> : null}
        <AssignedPeople people={techs} assigned={assigned} />
        <DateField name="startupDue" label="Startup" optional defaultValue={job.startupDue ?? ""} />
        <DateField name="reviewDue" label="Humidity review" optional defaultValue={job.reviewDue ?? ""} />
        <SubmitButton busy={busy} variant="secondary">
          Save schedule
        </SubmitButton>
      </ActionForm>
    </Card>
  );
}

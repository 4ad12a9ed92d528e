"use client";

import { ActionForm } from "@/components/forms/action-form";
import { problemOf } from "@/components/forms/error-summary";
import { Refusal } from "@/components/forms/refusal";
import { type Answer, problemsOf, useSentForm } from "@/components/forms/use-sent-form";
import { Card } from "@/components/ui/card";
import type { Choice } from "@/components/ui/choice-fields";
import { Notice } from "@/components/ui/notice";
import { SubmitButton } from "@/components/ui/submit-button";
import { DateField } from "@/components/ui/text-field";
import type { Job } from "@/lib/domain/jobs";
import { AssignedPeople } from "./assigned-people";

type Props = {
  readonly job: Job;
  readonly techs: readonly Choice[];
  readonly schedule: (input: unknown) => Promise<Answer>;
};

/** Who goes, and when. */
export function SchedulePanel({ job, techs, schedule }: Props) {
  const [sent, send, busy] = useSentForm((form) =>
    schedule({
      jobId: job.id,
      expectedVersion: job.version,
      startupDue: String(form.get("startupDue")),
      reviewDue: String(form.get("reviewDue")),
      techIds: form.getAll("techIds").map(String),
    }),
  );
  const error = (field: string) => problemOf(problemsOf(sent), field);
  const assigned = job.techs.map((tech) => tech.userId as string);
  return (
    <Card title="Assign and schedule">
      <ActionForm action={send} className="grid gap-3">
        {sent.state === "done" ? <Notice kind="done" title="Saved." /> : null}
        <Refusal form={sent} title="Not saved yet" />
        <AssignedPeople people={techs} assigned={assigned} />
        <DateField
          name="startupDue"
          label="Startup"
          optional
          defaultValue={job.startupDue ?? ""}
          error={error("startupDue")}
        />
        <DateField
          name="reviewDue"
          label="Humidity review"
          optional
          defaultValue={job.reviewDue ?? ""}
          error={error("reviewDue")}
        />
        <SubmitButton busy={busy} variant="secondary">
          Save schedule
        </SubmitButton>
      </ActionForm>
    </Card>
  );
}

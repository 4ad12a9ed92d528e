"use client";

import { useRouter } from "next/navigation";
import { ActionForm } from "@/components/forms/action-form";
import { problemOf } from "@/components/forms/error-summary";
import { FormActions, FormSection } from "@/components/forms/form-section";
import { Refusal } from "@/components/forms/refusal";
import { problemsOf, useSentForm } from "@/components/forms/use-sent-form";
import { Card } from "@/components/ui/card";
import { type Choice, SelectField } from "@/components/ui/choice-fields";
import { SubmitButton } from "@/components/ui/submit-button";
import { DateField } from "@/components/ui/text-field";
import type { FieldProblem } from "@/lib/domain/problems";
import { AssignedPeople } from "./assigned-people";
import { CUSTOMER_AND_HOME, CustomerAndHome } from "./customer-and-home";

type Answer =
  | { readonly ok: true; readonly value: string }
  | { readonly ok: false; readonly message: string; readonly fields: readonly FieldProblem[] };
type Props = {
  readonly techs: readonly Choice[];
  readonly weather: readonly Choice[];
  readonly create: (input: unknown) => Promise<Answer>;
};

const TEXTS = [...CUSTOMER_AND_HOME, "weatherFileId", "startupDue", "reviewDue"] as const;

export function NewJobForm({ techs, weather, create }: Props) {
  const router = useRouter();
  const [sent, send, busy] = useSentForm(async (form) => {
    const texts = Object.fromEntries(TEXTS.map((name) => [name, String(form.get(name) ?? "")]));
    const answer = await create({ ...texts, techIds: form.getAll("techIds").map(String) });
    if (answer.ok) router.push(`/jobs/${answer.value}`);
    return answer;
  });
  const error = (field: string) => problemOf(problemsOf(sent), field);
  return (
    <Card>
      <ActionForm action={send} className="grid gap-4">
        <Refusal form={sent} />
        <div className="grid gap-6">
          <CustomerAndHome error={error}>
            <SelectField
              name="weatherFileId"
              label="Weather file"
              optional
              options={weather}
              placeholder="none yet"
              defaultValue=""
              error={error("weatherFileId")}
            />
          </CustomerAndHome>
          <FormSection title="Plan">
            <DateField name="startupDue" label="Startup" optional error={error("startupDue")} />
            <DateField
              name="reviewDue"
              label="Humidity review"
              optional
              hint="Some weeks after the startup."
              error={error("reviewDue")}
            />
            <AssignedPeople people={techs} assigned={[]} />
          </FormSection>
        </div>
        <FormActions>
          <SubmitButton busy={busy} busyText="Opening…">
            Open the job
          </SubmitButton>
        </FormActions>
      </ActionForm>
    </Card>
  );
}

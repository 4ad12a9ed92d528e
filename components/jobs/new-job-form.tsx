"use client";

import { useRouter } from "next/navigation";
import { ActionForm } from "@/components/forms/action-form";
import { problemOf } from "@/components/forms/error-summary";
import { FormActions, FormSection } from "@/components/forms/form-section";
import { Refusal } from "@/components/forms/refusal";
import { problemsOf, useSentForm } from "@/components/forms/use-sent-form";
import { Card } from "@/components/ui/card";
import { type Choice, SelectField } from "@/components/ui/choice-fields";
import { NumberField } from "@/components/ui/number-field";
import { SubmitButton } from "@/components/ui/submit-button";
import { DateField, TextField } from "@/components/ui/text-field";
import type { FieldProblem } from "@/lib/domain/problems";
import { AssignedPeople } from "./assigned-people";

type Answer =
  | { readonly ok: true; readonly value: string }
  | { readonly ok: false; readonly message: string; readonly fields: readonly FieldProblem[] };
type Props = {
  readonly techs: readonly Choice[];
  readonly weather: readonly Choice[];
  readonly create: (input: unknown) => Promise<Answer>;
};

const TEXTS = [
  "title",
  "customerName",
  "customerEmail",
  "customerPhone",
  "addressLine",
  "city",
  "region",
  "postalCode",
  "elevationFt",
  "builder",
  "weatherFileId",
  "startupDue",
  "reviewDue",
] as const;

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
          <FormSection title="Customer">
            <TextField
              name="customerName"
              label="Customer name"
              error={error("customerName")}
              autoComplete="off"
            />
            <TextField
              name="customerPhone"
              label="Phone"
              optional
              type="tel"
              error={error("customerPhone")}
              autoComplete="off"
            />
            <TextField
              name="customerEmail"
              label="E-mail"
              optional
              type="email"
              error={error("customerEmail")}
              autoComplete="off"
            />
            <TextField
              name="title"
              label="Title"
              optional
              hint="To tell two systems in one home apart."
              error={error("title")}
            />
          </FormSection>
          <FormSection title="Home">
            <TextField
              name="addressLine"
              label="Street address"
              error={error("addressLine")}
              autoComplete="off"
            />
            <TextField name="city" label="City" error={error("city")} autoComplete="off" />
            <TextField name="region" label="State" error={error("region")} autoComplete="off" />
            <TextField
              name="postalCode"
              label="ZIP code"
              inputMode="numeric"
              error={error("postalCode")}
              autoComplete="off"
            />
            <NumberField
              name="elevationFt"
              label="Elevation"
              unit="ft"
              hint="Above sea level. The town’s is near enough: 100 ft change the air by 0.4 %."
              error={error("elevationFt")}
            />
            <TextField
              name="builder"
              label="Builder"
              optional
              hint="Compared across jobs."
              error={error("builder")}
              autoComplete="off"
            />
            <SelectField
              name="weatherFileId"
              label="Weather file"
              optional
              options={weather}
              placeholder="none yet"
              defaultValue=""
              error={error("weatherFileId")}
            />
          </FormSection>
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

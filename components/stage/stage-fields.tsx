import { problemOf } from "@/components/forms/error-summary";
import { FormSection } from "@/components/forms/form-section";
import type { FieldGroup } from "@/lib/domain/fields";
import type { FieldProblem } from "@/lib/domain/problems";
import type { ReferenceChoices } from "./choices";
import { type FieldValue, StageField } from "./stage-field";

type Props = {
  readonly groups: readonly FieldGroup[];
  readonly inputs: Readonly<Record<string, unknown>>;
  readonly problems: readonly FieldProblem[];
  readonly disabled: boolean;
  readonly choices: ReferenceChoices;
};

/** Declared fields under their headings, each with its value and what is wrong with it. */
export function StageFields({ groups, inputs, problems, disabled, choices }: Props) {
  return groups.map((group) => (
    <FormSection key={group.title} title={group.title}>
      {group.fields.map(([key, field]) => (
        <StageField
          key={key}
          name={key}
          field={field}
          value={(inputs[key] ?? null) as FieldValue}
          error={problemOf(problems, key)}
          disabled={disabled}
          choices={field.kind === "reference" ? choices[field.to] : []}
        />
      ))}
    </FormSection>
  ));
}

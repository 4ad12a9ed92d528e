import { useState } from "react";
import { problemOf } from "@/components/forms/error-summary";
import { FormSection } from "@/components/forms/form-section";
import type { FieldGroup } from "@/lib/domain/fields";
import type { FieldProblem } from "@/lib/domain/problems";
import { LOAD_PART_GROUPS } from "@/lib/domain/stages/load-parts";
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
  return groups.map((group) => {
    const section = (
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
    );
    return FOLDED.has(group.title) ? (
      <Folded key={group.title} group={group} inputs={inputs} problems={problems}>
        {section}
      </Folded>
    ) : (
      section
    );
  });
}

const FOLDED: ReadonlySet<string> = new Set(LOAD_PART_GROUPS);

/** Headings that most jobs leave empty open by a press; what is filled or wrong stands open from the start. */
function Folded({
  group,
  inputs,
  problems,
  children,
}: Pick<Props, "inputs" | "problems"> & { readonly group: FieldGroup; readonly children: React.ReactNode }) {
  const [begunOpen] = useState(() => group.fields.some(([key]) => (inputs[key] ?? null) !== null));
  const isWrong = group.fields.some(([key]) => problems.some((problem) => problem.field === key));
  return (
    <details open={begunOpen || isWrong} className="border-t border-rule pt-3">
      <summary className="cursor-pointer font-semibold">{group.title}</summary>
      <div className="mt-3 [&_legend]:sr-only">{children}</div>
    </details>
  );
}

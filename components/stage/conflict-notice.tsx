import { Button } from "@/components/ui/button";
import { Notice } from "@/components/ui/notice";
import type { FieldDef, FieldDefs } from "@/lib/domain/fields";
import type { ReferenceChoices } from "./choices";
import type { FieldValue } from "./stage-field";
import { readableValues, type TypedValues } from "./typed-values";

type Props = {
  readonly fields: FieldDefs;
  readonly mine: TypedValues;
  readonly theirs: TypedValues;
  readonly choices: ReferenceChoices;
  readonly keepMine: () => void;
};

/** Someone saved first: both values of every field that differs, and what can be done. */
export function ConflictNotice({ fields, mine, theirs, choices, keepMine }: Props) {
  const own = readableValues(fields, mine);
  const different = Object.entries(fields).filter(([key]) => (own[key] ?? null) !== (theirs[key] ?? null));
  return (
    <Notice
      kind="problem"
      title="Someone saved this record while you were typing"
      className="mb-4"
      action={
        <div className="flex flex-wrap gap-2">
          <Button type="button" onClick={keepMine}>
            Save mine over theirs
          </Button>
          <Button type="button" variant="quiet" onClick={() => window.location.reload()}>
            Drop mine, show theirs
          </Button>
        </div>
      }
    >
      <p>Your values are still in the form. These differ:</p>
      <ul className="mt-2 grid gap-1">
        {different.map(([key, field]) => (
          <li key={key}>
            <strong>{field.label}</strong>: yours {words(field, own[key] ?? null, choices)}, theirs{" "}
            {words(field, theirs[key] ?? null, choices)}
          </li>
        ))}
      </ul>
    </Notice>
  );
}

function words(field: FieldDef, value: FieldValue, choices: ReferenceChoices): string {
  if (value === null) return "empty";
  if (field.kind === "yes-no") return value === true ? "yes" : "no";
  if (field.kind === "reference")
    return choices[field.to].find((one) => one.value === value)?.label ?? String(value);
  return field.kind === "number" ? `${value} ${field.unit}`.trim() : String(value);
}

import { type Choice, RadioRow, SelectField } from "@/components/ui/choice-fields";
import { NumberField } from "@/components/ui/number-field";
import { DateField, TextArea, TextField } from "@/components/ui/text-field";
import { type FieldDef, readUnit } from "@/lib/domain/fields";
import { NO_CHOICES } from "./no-choices";

export type FieldValue = string | number | boolean | null;

type Props = {
  readonly name: string;
  readonly field: FieldDef;
  readonly value: FieldValue;
  readonly error: string | undefined;
  readonly disabled: boolean;
  /** What a reference may name. */
  readonly choices: readonly Choice[];
};

/** Longer texts get several lines. */
const ONE_LINE = 300;

/** Draws one field of a stage record from its definition. */
export function StageField({ name, field, value, error, disabled, choices }: Props) {
  const common = {
    name,
    label: field.label,
    hint: field.help,
    error,
    optional: field.neededToSign !== true,
    disabled,
  };
  switch (field.kind) {
    case "number":
      return (
        <NumberField
          {...common}
          unit={readUnit(field)}
          defaultValue={typeof value === "number" ? value : null}
        />
      );
    case "choice":
      return (
        <SelectField {...common} options={field.options} placeholder="Choose…" defaultValue={asText(value)} />
      );
    case "reference":
      return (
        <SelectField
          {...common}
          hint={choices.length === 0 && !disabled ? NO_CHOICES[field.to] : common.hint}
          options={choices}
          placeholder="Choose…"
          defaultValue={asText(value)}
        />
      );
    case "yes-no":
      return (
        <RadioRow
          {...common}
          options={[
            { value: "yes", label: "Yes" },
            { value: "no", label: "No" },
          ]}
          defaultValue={value === null ? null : value === true ? "yes" : "no"}
        />
      );
    case "date":
      return <DateField {...common} defaultValue={asText(value)} />;
    case "text":
      return field.maxLength > ONE_LINE ? (
        <TextArea {...common} rows={3} defaultValue={asText(value)} />
      ) : (
        <TextField {...common} defaultValue={asText(value)} />
      );
  }
}

function asText(value: FieldValue): string {
  return value === null ? "" : String(value);
}

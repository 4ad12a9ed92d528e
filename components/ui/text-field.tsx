import type { ComponentProps } from "react";
import { FieldFrame, type FieldProps, fieldIds } from "../forms/field-frame";

export type TextFieldProps = FieldProps & Omit<ComponentProps<"input">, keyof FieldProps>;

export function TextField({ name, label, hint, error, optional, id, className, ...input }: TextFieldProps) {
  const frame = { name, label, hint, error, optional, id };
  const ids = fieldIds(frame);
  return (
    <FieldFrame {...frame} className={className}>
      <input
        type="text"
        {...input}
        id={ids.input}
        name={name}
        className="control"
        aria-describedby={ids.describedBy}
        aria-invalid={error === undefined ? undefined : true}
      />
    </FieldFrame>
  );
}

export type DateFieldProps = Omit<TextFieldProps, "type">;

/** A calendar day, `YYYY-MM-DD`. */
export function DateField(props: DateFieldProps) {
  return <TextField {...props} type="date" />;
}

export type TextAreaProps = FieldProps & Omit<ComponentProps<"textarea">, keyof FieldProps>;

export function TextArea({ name, label, hint, error, optional, id, className, ...area }: TextAreaProps) {
  const frame = { name, label, hint, error, optional, id };
  const ids = fieldIds(frame);
  return (
    <FieldFrame {...frame} className={className}>
      <textarea
        rows={4}
        {...area}
        id={ids.input}
        name={name}
        className="control"
        aria-describedby={ids.describedBy}
        aria-invalid={error === undefined ? undefined : true}
      />
    </FieldFrame>
  );
}

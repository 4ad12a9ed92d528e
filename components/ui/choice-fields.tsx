import type { ComponentProps } from "react";
import { FieldFrame, type FieldProps, FieldWords, fieldIds } from "../forms/field-frame";
import { cx } from "./cx";

export type Choice = {
  readonly value: string;
  readonly label: string;
  readonly hint?: string;
  readonly disabled?: boolean;
};

export type SelectFieldProps = FieldProps &
  Omit<ComponentProps<"select">, keyof FieldProps | "children"> & {
    readonly options: readonly Choice[];
    /** The first line, standing for no choice; leave out when one is always chosen. */
    readonly placeholder?: string;
  };

export function SelectField(props: SelectFieldProps) {
  const { name, label, hint, error, optional, id, options, placeholder, className, ...select } = props;
  const frame = { name, label, hint, error, optional, id };
  const ids = fieldIds(frame);
  return (
    <FieldFrame {...frame} className={className}>
      <select
        {...select}
        id={ids.input}
        name={name}
        className="control"
        aria-describedby={ids.describedBy}
        aria-invalid={error === undefined ? undefined : true}
      >
        {placeholder === undefined ? null : <option value="">{placeholder}</option>}
        {options.map((option) => (
          <option key={option.value} value={option.value} disabled={option.disabled}>
            {option.label}
          </option>
        ))}
      </select>
    </FieldFrame>
  );
}

export type RadioRowProps = FieldProps & {
  readonly options: readonly Choice[];
  readonly defaultValue?: string | null | undefined;
  readonly value?: string;
  readonly onChange?: ComponentProps<"input">["onChange"];
  readonly disabled?: boolean;
  readonly className?: string;
};

const CHOICE =
  "choice flex min-h-10 cursor-pointer items-center gap-2.5 border border-rule-strong bg-sheet px-3 py-1.5 has-checked:border-accent has-checked:bg-[color-mix(in_srgb,var(--accent)_9%,var(--sheet))] has-checked:shadow-[inset_3px_0_0_var(--accent)] has-disabled:cursor-not-allowed has-disabled:bg-sunk has-disabled:text-muted has-focus-visible:outline-3 has-focus-visible:outline-offset-2 has-focus-visible:outline-accent";

/** A few choices side by side, of which one holds. */
export function RadioRow(props: RadioRowProps) {
  const { name, label, hint, error, optional, id, options, defaultValue, value, onChange, disabled } = props;
  const ids = fieldIds({ name, hint, error, id });
  return (
    <fieldset
      id={ids.input}
      tabIndex={-1}
      aria-describedby={ids.describedBy}
      disabled={disabled}
      className={cx("min-w-0", props.className)}
    >
      <legend className="mb-1 text-sm font-semibold">
        {label}
        {optional ? <span className="font-normal text-muted"> (optional)</span> : null}
      </legend>
      <div className="flex flex-wrap gap-2">
        {options.map((option) => (
          <label key={option.value} className={CHOICE}>
            <input
              type="radio"
              name={name}
              value={option.value}
              disabled={option.disabled}
              {...(value === undefined
                ? { defaultChecked: option.value === defaultValue }
                : { checked: option.value === value })}
              onChange={onChange}
              className="size-4.5 shrink-0 accent-accent outline-none"
            />
            <ChoiceWords option={option} />
          </label>
        ))}
      </div>
      <FieldWords ids={ids} hint={hint} error={error} />
    </fieldset>
  );
}

export type CheckFieldProps = Omit<FieldProps, "optional"> &
  Omit<ComponentProps<"input">, keyof FieldProps | "type">;

/** Yes or no; the label says what yes means. */
export function CheckField({ name, label, hint, error, id, className, ...input }: CheckFieldProps) {
  const ids = fieldIds({ name, hint, error, id });
  return (
    <div className={cx("min-w-0", className)}>
      <label className="choice flex min-h-10 cursor-pointer items-center gap-2.5 py-1.5">
        <input
          value="yes"
          {...input}
          type="checkbox"
          id={ids.input}
          name={name}
          className="size-5 shrink-0 accent-accent"
          aria-describedby={ids.describedBy}
          aria-invalid={error === undefined ? undefined : true}
        />
        <span className="text-sm font-semibold">{label}</span>
      </label>
      <div className="-mt-1 pl-7.5">
        <FieldWords ids={ids} hint={hint} error={error} />
      </div>
    </div>
  );
}

function ChoiceWords({ option }: { readonly option: Choice }) {
  return (
    <span className="text-sm leading-tight">
      {option.label}
      {option.hint === undefined ? null : <span className="block text-xs text-muted">{option.hint}</span>}
    </span>
  );
}

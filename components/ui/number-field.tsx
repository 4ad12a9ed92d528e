"use client";

import { type ComponentProps, useState } from "react";
import { type QuantityText, readQuantityText, shownUnit } from "@/lib/domain/quantity-text";
import { FieldFrame, type FieldProps, fieldIds } from "../forms/field-frame";
import { afterPress } from "./after-press";
import { cx } from "./cx";

export type NumberFieldProps = FieldProps &
  Omit<ComponentProps<"input">, keyof FieldProps | "type" | "value" | "defaultValue" | "onChange"> & {
    /** Shown beside the field; `""` for a plain number. */
    readonly unit: string;
    /** The text as typed, when the parent keeps it. */
    readonly value?: string;
    readonly defaultValue?: string | number | null | undefined;
    /** What can be read from the text so far, and the text itself. */
    readonly onTyped?: (read: QuantityText, text: string) => void;
  };

/**
 * A number with its unit. The text stays, and is sent, exactly as it was typed or pasted (`1,250 cfm`);
 * the schema that receives it reads it with the same `readQuantityText`.
 */
export function NumberField({
  name,
  label,
  hint,
  error,
  optional,
  id,
  unit,
  value,
  defaultValue,
  onTyped,
  onBlur,
  className,
  ...input
}: NumberFieldProps) {
  const [problem, setProblem] = useState<string>();
  const [converted, setConverted] = useState<string>();
  const frame = { name, label, hint, error: problem ?? error, optional, id };
  const ids = fieldIds(frame);
  const unitId = unit === "" ? undefined : `${ids.input}-unit`;
  return (
    <FieldFrame {...frame} className={className}>
      <div className="flex items-stretch">
        <input
          {...input}
          {...(value === undefined ? { defaultValue: defaultValue ?? undefined } : { value })}
          type="text"
          inputMode="decimal"
          autoComplete="off"
          id={ids.input}
          name={name}
          className={cx("control min-w-0 text-right", unitId !== undefined && "rounded-r-none!")}
          aria-describedby={cx(unitId, ids.describedBy) || undefined}
          aria-invalid={frame.error === undefined ? undefined : true}
          onChange={(event) => {
            const read = readQuantityText(event.target.value, unit);
            if (read.ok) setProblem(undefined);
            setConverted(read.ok ? read.converted : undefined);
            onTyped?.(read, event.target.value);
          }}
          onBlur={(event) => {
            // While typing, "-" or "1," is only unfinished; on leaving the field it is a problem.
            const read = readQuantityText(event.target.value, unit);
            afterPress(() => setProblem(read.ok ? undefined : read.problem));
            onBlur?.(event);
          }}
        />
        {unitId === undefined ? null : (
          <span
            id={unitId}
            className="flex min-w-13 shrink-0 items-center rounded-r-[3px] border border-l-0 border-rule-strong bg-sunk px-2.5 text-sm whitespace-nowrap text-muted"
          >
            {shownUnit(unit)}
          </span>
        )}
      </div>
      <p
        role="status"
        className={converted === undefined ? "sr-only" : "mt-1 text-sm font-semibold text-accent"}
      >
        {converted}
      </p>
    </FieldFrame>
  );
}

import type { ReactNode } from "react";
import { cx } from "../ui/cx";

/** What every field has. */
export type FieldProps = {
  readonly name: string;
  readonly label: string;
  /** How to fill it in, always visible. */
  readonly hint?: ReactNode;
  /** What is wrong and how to put it right. */
  readonly error?: string | undefined;
  /** Marked in words after the label; everything unmarked is needed. */
  readonly optional?: boolean;
  /** Give one when the same `name` stands twice on a page. */
  readonly id?: string;
};

/** The ids that tie a field to its words; the error summary links to `input`. */
export function fieldIds(props: Pick<FieldProps, "id" | "name" | "hint" | "error">) {
  const input = props.id ?? `field-${props.name}`;
  const hint = props.hint === undefined ? undefined : `${input}-hint`;
  const error = props.error === undefined ? undefined : `${input}-error`;
  return { input, hint, error, describedBy: cx(hint, error) || undefined };
}

type FieldFrameProps = FieldProps & { readonly children: ReactNode; readonly className?: string };

/** Label, hint, the control itself, then the error. */
export function FieldFrame({ label, hint, error, optional, children, className, ...rest }: FieldFrameProps) {
  const ids = fieldIds({ ...rest, hint, error });
  return (
    <div className={cx("min-w-0", className)}>
      <label htmlFor={ids.input} className="mb-1 block text-sm font-semibold">
        {label}
        {optional ? <span className="font-normal text-muted"> (optional)</span> : null}
      </label>
      {children}
      <FieldWords ids={ids} hint={hint} error={error} />
    </div>
  );
}

export function FieldWords({
  ids,
  hint,
  error,
}: {
  readonly ids: ReturnType<typeof fieldIds>;
  readonly hint?: ReactNode;
  readonly error?: string | undefined;
}) {
  return (
    <>
      {hint === undefined ? null : (
        <p id={ids.hint} className="mt-1 text-xs text-muted">
          {hint}
        </p>
      )}
      {error === undefined ? null : (
        <p id={ids.error} className="mt-1 text-sm font-semibold text-short">
          {error}
        </p>
      )}
    </>
  );
}

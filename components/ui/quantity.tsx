import { numberText, uncertaintyText } from "@/lib/charts/number-text";
import { cx } from "./cx";

export type QuantityProps = {
  /** `null` shows a dash and says "not recorded". */
  readonly value: number | null;
  readonly unit: string;
  readonly decimals: number;
  readonly uncertainty?: number | undefined;
  readonly className?: string;
};

/** A number with its unit beside it, smaller and muted, and its uncertainty when known. */
export function Quantity({ value, unit, decimals, uncertainty, className }: QuantityProps) {
  if (value === null) {
    return (
      <span className={cx("text-muted", className)}>
        <span aria-hidden="true">—</span>
        <span className="sr-only">not recorded</span>
      </span>
    );
  }
  return (
    <span className={cx("whitespace-nowrap", className)}>
      {numberText(value, decimals)}
      {uncertainty === undefined ? null : (
        <span className="text-[0.85em] text-muted"> {uncertaintyText(uncertainty, decimals)}</span>
      )}
      {unit === "" ? null : <span className="text-[0.8em] text-muted"> {unit}</span>}
    </span>
  );
}

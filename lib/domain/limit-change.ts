import { isLimitKey, limitDefinition } from "./limits";
import type { FieldProblem } from "./problems";
import { readQuantityText } from "./quantity-text";

type Values = Readonly<Record<string, number>>;

export type LimitChange =
  | { readonly ok: true; readonly values: Values }
  | { readonly ok: false; readonly problem: FieldProblem };

/**
 * A company's own limits after one of them was changed.
 *
 * @param typed - The new value as typed; `null` takes the company's own value away, which is also how one
 * that no rule reads any more is removed.
 */
export function changedLimits(values: Values, key: string, typed: string | null): LimitChange {
  if (typed === null) {
    const { [key]: taken, ...rest } = values;
    return taken === undefined
      ? refused("This limit already has its seed value. Close this and look again.")
      : { ok: true, values: rest };
  }
  if (!isLimitKey(key)) return refused(`No rule reads a limit named ${key}.`);
  const { unit, min, max, decimals } = limitDefinition(key);
  const read = readQuantityText(typed, unit);
  if (!read.ok) return refused(`New value: ${read.problem}`);
  const suffix = unit === "" ? "" : ` ${unit}`;
  if (read.value === null || !(read.value >= min && read.value <= max)) {
    return refused(`New value: enter a number from ${min} to ${max}${suffix}.`);
  }
  if (Number(read.value.toFixed(decimals)) !== read.value) {
    const digits = decimals === 1 ? "one digit" : `${decimals} digits`;
    return refused(
      `New value: use ${decimals === 0 ? "a whole number" : `at most ${digits} after the point`}.`,
    );
  }
  if (values[key] === read.value) return refused("New value: this is the value in force already.");
  return { ok: true, values: { ...values, [key]: read.value } };
}

function refused(message: string): LimitChange {
  return { ok: false, problem: { field: "value", message } };
}

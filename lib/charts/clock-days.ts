import { DateTime } from "luxon";

/** The day of the house's clock an instant lies in, as 2026-07-04. */
export function isoDayOf(atMs: number, timeZone: string): string {
  return DateTime.fromMillis(atMs, { zone: timeZone }).toISODate() ?? "";
}

/** From the beginning of one day of the house's clock to the end of another; `null` for what is no such span. */
export function spanOfDays(
  from: string,
  to: string,
  timeZone: string,
): { readonly fromMs: number; readonly toMs: number } | null {
  const [first, last] = [from, to].map((day) => DateTime.fromISO(day, { zone: timeZone }));
  if (!first?.isValid || !last?.isValid || first > last) return null;
  return { fromMs: first.startOf("day").toMillis(), toMs: last.endOf("day").toMillis() };
}

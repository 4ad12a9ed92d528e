/** How dates are written on every screen and paper. */
const DAY = { year: "numeric", month: "short", day: "numeric" } as const;
const MOMENT = { ...DAY, hour: "numeric", minute: "2-digit" } as const;

/** A calendar day, `2026-07-31` → `Jul 31, 2026`. */
export function dayText(isoDay: string): string {
  return new Date(`${isoDay}T00:00:00Z`).toLocaleDateString("en-US", { ...DAY, timeZone: "UTC" });
}

/** A moment on the company's own clock: `Jul 31, 2026, 2:03 PM`. */
export function momentText(isoMoment: string, timeZone: string): string {
  // Some releases of the language data set a narrow space before AM and PM; a plain one is the same everywhere.
  return new Date(isoMoment).toLocaleString("en-US", { ...MOMENT, timeZone }).replaceAll("\u202f", " ");
}

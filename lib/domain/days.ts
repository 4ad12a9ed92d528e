const DAY_MS = 86_400_000;

/** The day some days after another, both as ISO days. */
export function dayAfter(isoDay: string, days: number): string {
  return new Date(Date.parse(`${isoDay}T00:00:00Z`) + days * DAY_MS).toISOString().slice(0, 10);
}

/** Monday of the week of a day. */
export function mondayOf(isoDay: string): string {
  const weekday = new Date(`${isoDay}T00:00:00Z`).getUTCDay();
  return dayAfter(isoDay, -((weekday + 6) % 7));
}

/** The day of a moment on a company's own clock: what is signed there in the evening is not of the next day. */
export function dayOf(isoMoment: string, timeZone: string): string {
  return todayIn(timeZone, new Date(isoMoment));
}

/** Today on a company's own clock, as an ISO day. */
export function todayIn(timeZone: string, now = new Date()): string {
  return new Intl.DateTimeFormat("en-CA", { timeZone, dateStyle: "short" }).format(now);
}

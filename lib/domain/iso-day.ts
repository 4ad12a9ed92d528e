import { z } from "zod";

/** A day that somebody means: the year 26 or 20026 is a slip of the hand, and no database or chart holds it. */
export function isoDay(error: string) {
  return z.iso.date({ error }).refine((day) => day >= "1900-01-01" && day < "2200-01-01", { error });
}

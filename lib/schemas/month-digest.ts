import { z } from "zod";

/** Which month the owner's digest is made of. */
export const makeMonthSchema = z.strictObject({
  month: z
    .string({ error: "Month: choose one." })
    .regex(/^20\d\d-(0[1-9]|1[0-2])$/, { error: "Month: enter a year and month such as 2026-07." }),
});

import { z } from "zod";

/** One limit of the company: the new value as typed, or `null` to go back to the seed value. */
export const changeLimitSchema = z.strictObject({
  key: z.string().min(1).max(100),
  value: z
    .string({ error: "New value: enter a number." })
    .max(50, { error: "New value: enter a number." })
    .nullable(),
  reason: z
    .string({ error: "Reason is needed." })
    .trim()
    .min(1, { error: "Reason is needed: whoever reads a verdict later will ask why." })
    .max(500, { error: "Reason is longer than 500 characters. Shorten it." }),
});
export type ChangeLimitInput = z.output<typeof changeLimitSchema>;

/** The same change before it is made. */
export const previewLimitSchema = changeLimitSchema.omit({ reason: true });
export type PreviewLimitInput = z.output<typeof previewLimitSchema>;

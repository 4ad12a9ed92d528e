import { z } from "zod";

/** A question to be kept: its name, and the address behind the question mark. */
export const saveViewSchema = z.strictObject({
  name: z
    .string({ error: "Name: enter a name." })
    .trim()
    .min(1, { error: "Name: enter a name, for instance “Complaints by airflow”." })
    .max(80, { error: "Name is longer than 80 characters. Shorten it." }),
  query: z.string().max(2_000, { error: "The question is too long to keep." }),
  shared: z.union([z.boolean(), z.literal("on").transform(() => true)]).default(false),
});
export type SaveViewInput = z.output<typeof saveViewSchema>;

export const removeViewSchema = z.strictObject({ viewId: z.uuid() });
export type RemoveViewInput = z.output<typeof removeViewSchema>;

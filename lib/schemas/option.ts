import { z } from "zod";

const uuid = z.uuid({ error: "Choose one from the list." });
const label = z
  .string({ error: "Name: enter text." })
  .trim()
  .min(1, { error: "Name is needed." })
  .max(80, { error: "Name is longer than 80 characters." });

/** A new option: a copy of another one, or what the records decide now. */
export const addOptionSchema = z.strictObject({ jobId: uuid, label, copyOf: uuid.nullable() });
export type AddOptionInput = z.output<typeof addOptionSchema>;

/** The values are checked by the fields' own schema. */
export const saveOptionSchema = z.strictObject({
  jobId: uuid,
  optionId: uuid,
  expectedVersion: z.int32().min(1),
  label,
  inputs: z.record(z.string(), z.unknown()),
});
export type SaveOptionInput = z.output<typeof saveOptionSchema>;

export const moveOptionSchema = z.strictObject({
  jobId: uuid,
  optionId: uuid,
  by: z.union([z.literal(-1), z.literal(1)]),
});
export type MoveOptionInput = z.output<typeof moveOptionSchema>;

export const removeOptionSchema = z.strictObject({ jobId: uuid, optionId: uuid });
export type RemoveOptionInput = z.output<typeof removeOptionSchema>;

export const chooseOptionSchema = z.strictObject({
  jobId: uuid,
  optionId: uuid,
  expectedVersion: z.int32().min(1),
  reason: z
    .string({ error: "Why this one: enter text." })
    .trim()
    .min(1, { error: "Why this one: a reason is needed." })
    .max(1_000, { error: "Why this one is longer than 1,000 characters." }),
  /** Signed records that would change are reopened only when the person said so. */
  reopenSigned: z.boolean(),
});
export type ChooseOptionInput = z.output<typeof chooseOptionSchema>;

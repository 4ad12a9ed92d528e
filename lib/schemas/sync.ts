import { z } from "zod";

const plainValue = z.union([z.string().max(5_000), z.number(), z.boolean(), z.null()]);

/** What a phone sends: changed fields only, each with the value it started from. */
export const syncStartupSchema = z.strictObject({
  /** Made on the device, once for each upload: a repeat gets the first answer. */
  clientId: z.uuid(),
  /** When the device sent it by its own clock, which may be wrong; kept, never trusted. */
  deviceTime: z.iso.datetime(),
  fields: z
    .record(z.string().max(80), z.strictObject({ base: plainValue, value: plainValue }))
    .refine((fields) => Object.keys(fields).length <= 200, { error: "Too many fields in one upload." }),
});
export type SyncStartupInput = z.output<typeof syncStartupSchema>;

/** What the phone is told: the record as it stands now and what became of each field. */
export const syncAnswerSchema = z.object({
  version: z.int().nullable(),
  inputs: z.record(z.string(), plainValue),
  conflicts: z.array(z.object({ field: z.string(), theirs: plainValue, mine: plainValue })),
  problems: z.array(z.object({ field: z.string(), message: z.string() })),
});
export type SyncAnswer = z.output<typeof syncAnswerSchema>;

import { z } from "zod";
import { MOST_TEXT } from "@/lib/domain/field-range";

export const plainValue = z.union([z.string().max(MOST_TEXT), z.number(), z.boolean(), z.null()]);

/** Changed fields only, each with the value the device started from. */
export const fieldChangesSchema = z
  .record(z.string().max(80), z.strictObject({ base: plainValue, value: plainValue }))
  .refine((fields) => Object.keys(fields).length <= 300, { error: "Too many fields in one upload." });

/** What a phone sends of a startup record. */
export const syncStartupSchema = z.strictObject({
  /** Made on the device, once for each upload: a repeat gets the first answer. */
  clientId: z.uuid(),
  /** When the device sent it by its own clock, which may be wrong; kept, never trusted. */
  deviceTime: z.iso.datetime(),
  fields: fieldChangesSchema,
  /** What still waits on the device after this upload, for the office to see. */
  waiting: z
    .strictObject({ fields: z.int().min(0).max(10_000), photos: z.int().min(0).max(10_000) })
    .optional(),
  /** Tag of the bundle the device holds, when it also asks whether there is news. */
  bundleTag: z.string().max(1_000).nullable().optional(),
});
export type SyncStartupInput = z.output<typeof syncStartupSchema>;

/** What became of an upload. A repeat of it gets the same again. */
export const uploadOutcomeSchema = z.object({
  /** What the record took of this upload, as it reads it: the device's next base of these fields. */
  accepted: z.record(z.string(), plainValue).default({}),
  conflicts: z.array(z.object({ field: z.string(), theirs: plainValue, mine: plainValue })),
  problems: z.array(z.object({ field: z.string(), message: z.string() })),
  /** Fields that came after signing: kept for the office to decide. The device may forget them. */
  waiting: z.array(z.string()).default([]),
});
export type UploadOutcome = z.output<typeof uploadOutcomeSchema>;

/** What the phone is told: what became of each field, and the record as it stands at this moment. */
export type SyncAnswer = UploadOutcome & {
  readonly version: number | null;
  readonly state: "draft" | "signed" | null;
  readonly inputs: Readonly<Record<string, unknown>>;
  /** The server's clock, which decides. */
  readonly serverTime: string;
  /** The bundle's tag after this upload, for a device that sent the one it holds. */
  readonly bundleTag?: string;
};

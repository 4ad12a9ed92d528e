import { z } from "zod";
import { COMPARED_KEYS } from "@/lib/domain/across-jobs";

/** The question as it stands in the address. Anything unknown there counts as not asked. */
export const acrossJobsSchema = z.object({
  by: z.enum(COMPARED_KEYS).catch("equipmentModelId").default("equipmentModelId"),
  /** The group whose jobs are shown; empty for those without a value. */
  value: z
    .string()
    .max(200)
    .refine((text) => !text.includes("\0"))
    .nullable()
    .catch(null)
    .default(null),
});
export type AcrossJobsQuery = z.output<typeof acrossJobsSchema>;

import { z } from "zod";
import { COMPARED_KEYS, MEASURE_KEYS, OUTCOME_COUNTED_KEYS } from "@/lib/domain/across-jobs";
import { isoDay } from "@/lib/domain/iso-day";

const day = isoDay("Choose a day.").nullable().catch(null).default(null);

/** The question as it stands in the address. Anything unknown there counts as not asked. */
export const acrossJobsSchema = z.object({
  /** `null`: what goes with the outcome, over all settings. */
  by: z.enum(COMPARED_KEYS).nullable().catch(null).default(null),
  outcome: z.enum(OUTCOME_COUNTED_KEYS).catch("humidity").default("humidity"),
  measure: z.enum(MEASURE_KEYS).nullable().catch(null).default(null),
  from: day,
  to: day,
  equipment: z.uuid().nullable().catch(null).default(null),
  /** The group whose jobs are shown; empty for those without a value. */
  value: z
    .string()
    .max(200)
    .refine((text) => !text.includes("\0"))
    .nullable()
    .catch(null)
    .default(null),
  page: z.coerce.number().pipe(z.int().min(1).max(100_000)).catch(1).default(1),
});
export type AcrossJobsQuery = z.output<typeof acrossJobsSchema>;

/** The same question as an address, without what is not asked. */
export function acrossJobsAddress(query: Partial<AcrossJobsQuery>): string {
  const asked = Object.entries(query).filter(
    ([key, value]) =>
      value !== null &&
      value !== undefined &&
      !(key === "page" && value === 1) &&
      !(key === "outcome" && value === "humidity"),
  );
  return new URLSearchParams(asked.map(([key, value]) => [key, String(value)])).toString();
}

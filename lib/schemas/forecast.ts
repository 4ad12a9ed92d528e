import { z } from "zod";
import { HOUSE_ASSUMPTION_WORDS, SYSTEM_ASSUMPTIONS } from "@/lib/domain/forecast/assumptions";

/** Assumptions set otherwise, each between the bounds its slider has. */
function within(words: Readonly<Record<string, { readonly min: number; readonly max: number }>>) {
  return z.strictObject(
    Object.fromEntries(
      Object.entries(words).map(([name, { min, max }]) => [name, z.number().min(min).max(max).optional()]),
    ),
  );
}
export const forecastChangesSchema = z.strictObject({
  house: within(HOUSE_ASSUMPTION_WORDS),
  system: within(SYSTEM_ASSUMPTIONS),
});

/** Keeps the design's forecast: with the assumptions as they were set on the page. */
export const keepForecastSchema = z.strictObject({ jobId: z.uuid(), changed: forecastChangesSchema });
export type KeepForecastInput = z.output<typeof keepForecastSchema>;

/** A forecast run on the server: of the saved options, each central year first. */
export const forecastOrderSchema = z.object({
  jobId: z.uuid(),
  changed: z
    .string()
    .max(4_000)
    .default('{"house":{},"system":{}}')
    .transform((text, context): unknown => {
      try {
        return JSON.parse(text);
      } catch {
        context.addIssue({ code: "custom", message: "Not JSON." });
        return z.NEVER;
      }
    })
    .pipe(forecastChangesSchema),
  members: z.coerce.number().int().min(1).max(20).default(10),
});
export type ForecastOrderInput = z.output<typeof forecastOrderSchema>;

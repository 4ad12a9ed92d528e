import { z } from "zod";
import { COLUMNS } from "@/lib/domain/ledger";
import { STAGES } from "@/lib/domain/stages";
import { VERDICTS } from "@/lib/engineering/findings";

/** Parts that several answers share. Descriptions stand in the published description of the API. */
export const id = (what: string) =>
  z.uuid({ error: `${what}: give the id as this API gave it.` }).describe(what);
export const day = (what: string) => z.iso.date().nullable().describe(what);
export const stage = z.enum(STAGES);
export const verdict = z.enum(VERDICTS);
/** The same as they are asked for in an address. */
export const asked = {
  stage: z.enum(STAGES, { error: `stage: give one of ${STAGES.join(", ")}.` }).optional(),
  verdict: z.enum(VERDICTS, { error: `verdict: give one of ${VERDICTS.join(", ")}.` }).optional(),
};
export const column = z.enum(COLUMNS);
export const ofJob = z.object({ jobId: id("Id of a job") });
export const nothing = z.object({});

/** Every list: how many at most, and where it goes on. */
export const page = {
  limit: z.coerce
    .number({ error: "limit: give a whole number from 1 to 200." })
    .pipe(
      z
        .int({ error: "limit: give a whole number from 1 to 200." })
        .min(1, { error: "limit: give a whole number from 1 to 200." })
        .max(200, { error: "limit: give a whole number from 1 to 200." }),
    )
    .default(50)
    .describe("How many at most: 1 to 200, 50 when left out"),
};
export const nextCursor = z
  .string()
  .nullable()
  .describe("Give it as `cursor` to read on; null at the end of the list");

export const basis = z.object({
  ruleId: z.string().describe("Stable name of the rule"),
  title: z.string(),
  kind: z.enum(["published source", "maker's data", "company rule", "common practice, no source", "physics"]),
  source: z.string().describe("The source in words"),
  certainty: z.enum(["published", "computed", "recalled", "unverified", "practice"]),
});

/** What every refusal looks like. */
export const apiError = z
  .object({
    code: z.string().describe("Stable: the same code for the same cause"),
    message: z.string().describe("One sentence for people"),
    fields: z
      .array(z.object({ field: z.string(), message: z.string().describe("What to change") }))
      .describe("Each field that is wrong, and the fix"),
    details: z.record(z.string(), z.unknown()),
  })
  .describe("Every refusal has this shape.");

import { z } from "zod";
import {
  CALLBACK_CAUSE_KEYS,
  CALLBACK_KIND_KEYS,
  CALLBACK_STATE_KEYS,
  OUTCOME_KEYS,
} from "@/lib/domain/callbacks";
import { isoDay } from "@/lib/domain/iso-day";

const uuid = z.uuid({ error: "Choose one from the list." });
const text = (label: string, most = 2_000) =>
  z
    .string({ error: `${label}: enter text.` })
    .trim()
    .max(most, { error: `${label} is longer than ${most.toLocaleString("en-US")} characters. Shorten it.` });
const day = (label: string) => isoDay(`${label}: enter a date such as 2026-07-31.`);
const dayOrNone = (label: string) =>
  z
    .union([z.literal(""), day(label)], { error: `${label}: enter a date such as 2026-07-31.` })
    .transform((given) => (given === "" ? null : given));

/** A complaint as it is taken down on the phone. */
export const logCallbackSchema = z.strictObject({
  jobId: uuid,
  kind: z.enum(CALLBACK_KIND_KEYS, { error: "Complaint: choose one from the list." }),
  reportedOn: day("Reported on"),
  reportedByName: text("Reported by", 200),
  dueOn: dayOrNone("Visit by").optional(),
  complaint: text("In their words").min(1, { error: "In their words: write down what was said." }),
});
export type LogCallbackInput = z.output<typeof logCallbackSchema>;

/** What was found, what was done, and whether it worked. */
export const workCallbackSchema = z
  .strictObject({
    callbackId: uuid,
    expectedVersion: z.coerce.number().pipe(z.int32().min(1)),
    causeKind: z
      .union([z.literal(""), z.enum(CALLBACK_CAUSE_KEYS)], {
        error: "Kind of cause: choose one from the list.",
      })
      .transform((given) => (given === "" ? null : given))
      .default(null),
    cause: text("Cause"),
    fix: text("Fix"),
    fixedOn: dayOrNone("Fixed on"),
    outcome: z
      .union([z.literal(""), z.enum(OUTCOME_KEYS)], { error: "Outcome: choose one from the list." })
      .transform((given) => (given === "" ? null : given)),
    outcomeNote: text("Note on the outcome"),
    outcomeCheckedOn: dayOrNone("Outcome checked on"),
    /** Whoever saves puts their name to the outcome. */
    signOutcome: z.literal("on").optional(),
    dueOn: dayOrNone("Next step due").default(null),
  })
  .superRefine((given, context) => {
    const need = (path: string, message: string) =>
      context.addIssue({ code: "custom", path: [path], message });
    if (given.fixedOn !== null && given.fix === "") need("fix", "Fix: say what was done on that day.");
    if (given.outcome !== null && given.fix === "") need("fix", "Fix: say what was done before its outcome.");
    if (given.outcome !== null && given.outcomeCheckedOn === null)
      need("outcomeCheckedOn", "Outcome checked on: enter the day it was checked.");
  });
export type WorkCallbackInput = z.output<typeof workCallbackSchema>;

/** Which callbacks the list shows, as it stands in the address. Anything unknown there counts as not asked. */
export const callbackListSchema = z.object({
  state: z.enum(CALLBACK_STATE_KEYS).nullable().catch(null).default(null),
  kind: z.enum(CALLBACK_KIND_KEYS).nullable().catch(null).default(null),
  /** The job a new complaint is about: number, name or address. */
  find: z.string().trim().max(100).catch("").default(""),
  page: z.coerce.number().pipe(z.int().min(1).max(100_000)).catch(1).default(1),
});
export type CallbackListQuery = z.output<typeof callbackListSchema>;

import { z } from "zod";
import { isoDay } from "@/lib/domain/iso-day";
import {
  DUE_CHOICES,
  type DueChoice,
  FIRST_COLUMNS,
  JOB_COLUMN_KEYS,
  type JobColumn,
} from "@/lib/domain/job-table";
import { readQuantityText } from "@/lib/domain/quantity-text";
import { STAGES } from "@/lib/domain/stages";

const shortText = (label: string) =>
  z
    .string({ error: `${label}: enter text.` })
    .trim()
    .max(200, { error: `${label} is longer than 200 characters.` });
const neededText = (label: string) => shortText(label).min(1, { error: `${label} is needed.` });
const optionalText = (label: string) => shortText(label).default("");
const day = (label: string) =>
  z
    .union([z.literal(""), isoDay(`${label}: enter a date such as 2026-07-31.`)])
    .nullable()
    .default(null)
    .transform((text) => (text === "" ? null : text));
const uuid = z.uuid({ error: "Choose one from the list." });

const elevation = z.union([z.number(), z.string()]).transform((given, context) => {
  const read =
    typeof given === "number" ? { ok: true as const, value: given } : readQuantityText(given, "ft");
  if (read.ok && read.value !== null && read.value >= -300 && read.value <= 12_000) return read.value;
  context.addIssue({
    code: "custom",
    message: "Elevation: enter feet above sea level, from -300 to 12,000.",
  });
  return z.NEVER;
});

const note = z
  .string({ error: "Note: enter text." })
  .trim()
  .max(2_000, { error: "Note is longer than 2,000 characters. Shorten it." })
  .default("");
/** Who it is for and where. */
const facts = {
  title: optionalText("Title"),
  customerName: neededText("Customer name"),
  customerEmail: z
    .union([z.literal(""), z.email({ error: "E-mail: enter an address such as name@example.com." })])
    .default(""),
  customerPhone: optionalText("Phone"),
  addressLine: neededText("Street address"),
  city: neededText("City"),
  region: neededText("State"),
  postalCode: neededText("ZIP code"),
  elevationFt: elevation,
  builder: optionalText("Builder"),
  note,
};

/** What opens a job: who, where, when, and who does it. */
export const createJobSchema = z.strictObject({
  ...facts,
  weatherFileId: z
    .union([z.literal(""), uuid])
    .nullable()
    .default(null)
    .transform((id) => (id === "" ? null : id)),
  startupDue: day("Startup date"),
  reviewDue: day("Review date"),
  techIds: z.array(uuid).max(10, { error: "At most ten people on one job." }).default([]),
});
export type CreateJobInput = z.output<typeof createJobSchema>;

/** Who and where, put right in a job that is there. */
export const correctJobSchema = z.strictObject({
  jobId: uuid,
  expectedVersion: z.int32().min(1),
  ...facts,
});
export type CorrectJobInput = z.output<typeof correctJobSchema>;

export const scheduleJobSchema = z.strictObject({
  jobId: uuid,
  expectedVersion: z.int32().min(1),
  startupDue: day("Startup date"),
  reviewDue: day("Review date"),
  techIds: z.array(uuid).max(10, { error: "At most ten people on one job." }),
});
export type ScheduleJobInput = z.output<typeof scheduleJobSchema>;

/** The stages an action writes are fixed by the action; the values are checked by the stage's own schema. */
export const saveStageSchema = z.strictObject({
  jobId: uuid,
  stage: z.enum(STAGES),
  expectedVersion: z.int32().min(1).nullable(),
  inputs: z.record(z.string(), z.unknown()),
});
export type SaveStageInput = z.output<typeof saveStageSchema>;

export const signStageSchema = z.strictObject({
  jobId: uuid,
  stage: z.enum(STAGES),
  expectedVersion: z.int32().min(1),
  signatureName: neededText("Name of the signer"),
});
export type SignStageInput = z.output<typeof signStageSchema>;

export const reopenStageSchema = z.strictObject({
  jobId: uuid,
  stage: z.enum(STAGES),
  reason: neededText("Reason for reopening"),
});
export type ReopenStageInput = z.output<typeof reopenStageSchema>;

const DUE_KEYS = Object.keys(DUE_CHOICES) as DueChoice[];

/** Filters of the jobs table as they stand in the address. Anything unknown there counts as not set. */
export const jobListSchema = z.object({
  search: z
    .string()
    .max(100)
    .refine((text) => !text.includes("\0"))
    .catch("")
    .default(""),
  stage: z.enum(STAGES).nullable().catch(null).default(null),
  verdict: z
    .enum(["meets", "falls short", "can't tell", "not measured"])
    .nullable()
    .catch(null)
    .default(null),
  tech: z.uuid().nullable().catch(null).default(null),
  attention: z.literal("1").nullable().catch(null).default(null),
  complaint: z.literal("1").nullable().catch(null).default(null),
  due: z.enum(DUE_KEYS).nullable().catch(null).default(null),
  sort: z.enum(JOB_COLUMN_KEYS).catch("number").default("number"),
  way: z.enum(["up", "down"]).nullable().catch(null).default(null),
  /** The columns shown, by key, with commas between them. */
  columns: z
    .string()
    .nullable()
    .catch(null)
    .default(null)
    .transform((text): readonly JobColumn[] => {
      const chosen = JOB_COLUMN_KEYS.filter((key) => key === "number" || text?.split(",").includes(key));
      return text === null || text === "" ? FIRST_COLUMNS : chosen;
    }),
  /** The number of the job the page begins after. */
  after: z.coerce.number().pipe(z.int32().positive()).nullable().catch(null).default(null),
  /** The number of the job the page ends before. */
  before: z.coerce.number().pipe(z.int32().positive()).nullable().catch(null).default(null),
});
export type JobListQuery = z.output<typeof jobListSchema>;

export const modelSchema = z.strictObject({ modelId: uuid });

export const jobIdSchema = z.strictObject({ jobId: uuid });

/** The first day of the week to show; any other day of it will do. */
export const weekSchema = z.object({ from: isoDay("Choose a week.").nullable().catch(null).default(null) });

import { z } from "zod";
import { type ApiEndpoint, READS } from "@/lib/domain/api-endpoint";
import { PACKET_KINDS, PACKET_LANGUAGES, PACKET_PAPERS } from "@/lib/domain/packets";
import { asked, basis, column, day, id, nextCursor, nothing, ofJob, page, stage, verdict } from "./parts";

const job = z.object({
  id: id("Id of the job"),
  number: z.int().describe("Number in the company"),
  title: z.string(),
  state: z.enum(["open", "closed", "cancelled"]),
  customerName: z.string(),
  place: z.string(),
  stage: stage.nullable().describe("The stage record that waits for work; null when all are signed"),
  verdict: verdict.nullable().describe("The worst verdict of the job; null while nothing carries one"),
  attention: z.array(z.string()).describe("Why it needs attention, in words"),
  startupDue: day("Day the startup is due"),
  reviewDue: day("Day the humidity review is due"),
  techs: z.array(z.string()).describe("Names of who is assigned"),
});

export const listJobs = {
  ...READS,
  name: "api list jobs",
  path: "/jobs",
  summary: "Jobs, newest first",
  description: "The company's jobs with the stage each waits in, its verdict and what is due.",
  permission: "job.read",
  params: nothing,
  query: z.object({
    ...page,
    cursor: z
      .string()
      .regex(/^[1-9]\d{0,8}$/, { error: "cursor: give what the page before answered as `nextCursor`." })
      .optional()
      .describe("Where the page begins: nextCursor of the page before"),
    ...asked,
    search: z
      .string()
      .max(100, { error: "search: give at most 100 characters." })
      .optional()
      .describe("Words of number, name or address"),
  }),
  answer: z.object({ jobs: z.array(job), nextCursor }),
} as const satisfies ApiEndpoint;

const cell = z.object({
  value: z.union([z.number(), z.string()]).nullable().describe("Null: nothing is known; text: a setting"),
  uncertainty: z.number().nullable().describe("Expanded, k = 2, in the line's unit"),
  verdict: verdict.nullable(),
  note: z.string().nullable(),
  evidence: z
    .object({ stage, field: z.string().nullable() })
    .nullable()
    .describe("The stage record and the field in it that hold it"),
});

const line = z.object({
  key: z.string().describe("Stable name of the line"),
  group: z.string(),
  label: z.string(),
  unit: z.string().describe("Unit of every number of the line; empty where it has none"),
  verdict: verdict.nullable(),
  cells: z.record(column, cell).describe("Designed, set, measured, lived"),
  bases: z.array(basis).describe("What its verdicts rest on"),
});

export const readLedger = {
  ...READS,
  name: "api read ledger",
  path: "/jobs/{jobId}/ledger",
  summary: "The ledger of a job",
  description: "Every line with its unit: what was designed, set, measured and lived, each with its verdict.",
  permission: "job.read",
  params: ofJob,
  query: nothing,
  answer: z.object({ job, lines: z.array(line) }),
} as const satisfies ApiEndpoint;

const figure = z.object({
  label: z.string(),
  value: z.number(),
  unit: z.string(),
  uncertainty: z.number().nullable().describe("Expanded, k = 2"),
});

const finding = z.object({
  stage,
  statement: z.string().describe("One sentence with the numbers in it"),
  verdict: verdict.nullable().describe("Null: for information"),
  binding: z.boolean().describe("False: it never fails a job by itself"),
  figures: z.array(figure),
  basis,
  nextStep: z.string().nullable(),
  caution: z.string().nullable(),
  fields: z.array(z.string()).describe("The fields it used or misses"),
});

export const readFindings = {
  ...READS,
  name: "api read findings",
  path: "/jobs/{jobId}/findings",
  summary: "The findings of a job",
  description: "Every checked statement as the records stand now, by stage record, with what it rests on.",
  permission: "job.read",
  params: ofJob,
  query: z.object(asked),
  answer: z.object({ findings: z.array(finding) }),
} as const satisfies ApiEndpoint;

const packet = z.object({
  id: id("Id of the packet"),
  kind: z.enum(PACKET_KINDS),
  language: z.enum(PACKET_LANGUAGES),
  paper: z.enum(PACKET_PAPERS),
  revision: z.int(),
  sha256: z.string().describe("SHA-256 of the PDF: a file with another one is another file"),
  sizeBytes: z.int(),
  pages: z.int(),
  createdAt: z.iso.datetime(),
  createdByName: z.string(),
});

export const listPackets = {
  ...READS,
  name: "api list packets",
  path: "/jobs/{jobId}/packets",
  summary: "The packets of a job",
  description: "Every packet that was made, newest first, with the SHA-256 of its PDF.",
  permission: "packet.make",
  params: ofJob,
  query: nothing,
  answer: z.object({ packets: z.array(packet) }),
} as const satisfies ApiEndpoint;

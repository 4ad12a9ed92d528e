import { z } from "zod";
import { type ApiEndpoint, READS } from "@/lib/domain/api-endpoint";
import { MOST_LOG_BYTES } from "@/lib/domain/file-limits";
import { WORK_STATES } from "@/lib/domain/work";
import { id, nothing, ofJob } from "./parts";

export const sendLog = {
  name: "api send log",
  method: "POST",
  path: "/jobs/{jobId}/logs",
  summary: "Send a humidity log",
  description:
    "The file as the logger or thermostat gave it: CSV or a ZIP of CSV files, columns told from the headings. It is read in the background; ask how it gets on with the id answered. Sent again with the same key it is not read twice.",
  access: "write",
  permission: "log.upload",
  params: ofJob,
  query: z.object({
    sourceName: z
      .string({ error: "sourceName: name the logger in at most 80 characters, such as hall sensor." })
      .trim()
      .min(1, { error: "sourceName: name the logger in at most 80 characters, such as hall sensor." })
      .max(80, { error: "sourceName: name the logger in at most 80 characters, such as hall sensor." })
      .describe("The logger: files of one logger are one log"),
    fileName: z
      .string()
      .trim()
      .min(1, { error: "fileName: leave it out or give a name." })
      .max(120, { error: "fileName: give at most 120 characters." })
      .default("log.csv"),
    timeZone: z
      .string()
      .max(60, { error: "timeZone: give a zone such as America/Chicago." })
      .optional()
      .describe("The logger's clock, such as America/Chicago; left out: the company's"),
  }),
  body: { kind: "file", mostBytes: MOST_LOG_BYTES, what: "The log, at most 50 MB" },
  keyed: true,
  status: 202,
  answer: z.object({ workId: id("Id of the work that reads it") }),
} as const satisfies ApiEndpoint;

export const followLog = {
  ...READS,
  name: "api follow log",
  path: "/jobs/{jobId}/logs/{workId}",
  summary: "How a log is getting on",
  description: "Whether a log that was sent has been read, and what came of it.",
  permission: "log.upload",
  params: ofJob.extend({ workId: id("Id of the work") }),
  query: nothing,
  answer: z.object({
    state: z.enum(WORK_STATES),
    share: z.number().describe("Of the work, 0 to 1"),
    message: z.string().describe("What came of it, or why it was refused"),
    fields: z.array(z.object({ field: z.string(), message: z.string() })),
  }),
} as const satisfies ApiEndpoint;

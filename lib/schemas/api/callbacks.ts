import { z } from "zod";
import { type ApiEndpoint, READS } from "@/lib/domain/api-endpoint";
import {
  CALLBACK_CAUSE_KEYS,
  CALLBACK_KIND_KEYS,
  CALLBACK_STATE_KEYS,
  OUTCOME_KEYS,
} from "@/lib/domain/callbacks";
import { isoDay } from "@/lib/domain/iso-day";
import { logCallbackSchema } from "../callback";
import { day, id, nextCursor, nothing, page } from "./parts";

const callback = z.object({
  id: id("Id of the callback"),
  jobId: id("Id of its job"),
  jobNumber: z.int(),
  customerName: z.string(),
  kind: z.enum(CALLBACK_KIND_KEYS),
  state: z.enum(CALLBACK_STATE_KEYS),
  reportedOn: z.iso.date(),
  reportedByName: z.string(),
  complaint: z.string(),
  dueOn: day("By when the next step is due"),
  causeKind: z.enum(CALLBACK_CAUSE_KEYS).nullable(),
  cause: z.string(),
  fix: z.string(),
  fixedOn: day("Day of the fix"),
  outcome: z.enum(OUTCOME_KEYS).nullable(),
  outcomeCheckedOn: day("Day the outcome was checked"),
});

export const listCallbacks = {
  ...READS,
  name: "api list callbacks",
  path: "/callbacks",
  summary: "Callbacks, newest first",
  description: "What homeowners complained of, what was found and done, and whether it worked.",
  permission: "callback.edit",
  params: nothing,
  query: z.object({
    ...page,
    cursor: z
      .uuid({ error: "cursor: give what the page before answered as `nextCursor`." })
      .optional()
      .describe("Where the page begins: nextCursor of the page before"),
    jobId: z
      .uuid({ error: "jobId: give the id of a job as this API gave it." })
      .optional()
      .describe("Of one job only"),
    state: z
      .enum(CALLBACK_STATE_KEYS, { error: `state: give one of ${CALLBACK_STATE_KEYS.join(", ")}.` })
      .optional(),
  }),
  answer: z.object({ callbacks: z.array(callback), nextCursor }),
} as const satisfies ApiEndpoint;

const KINDS = `kind: give one of ${CALLBACK_KIND_KEYS.join(", ")}.`;
const kept = logCallbackSchema.shape;

export const addCallback = {
  name: "api add callback",
  method: "POST",
  path: "/callbacks",
  summary: "Take a complaint down",
  description:
    "Keeps beside it what the job's record says at this moment, mails the office, and stands on the trail. Sent again with the same key it answers the same callback.",
  access: "write",
  permission: "callback.edit",
  params: nothing,
  query: nothing,
  body: {
    kind: "json",
    mostBytes: 16_384,
    schema: z.strictObject({
      jobId: z.uuid({ error: "jobId: give the id of a job as this API gave it." }),
      kind: z.enum(CALLBACK_KIND_KEYS, { error: KINDS }),
      reportedOn: isoDay("reportedOn: give a day such as 2026-07-31."),
      reportedByName: kept.reportedByName.default(""),
      complaint: kept.complaint,
      dueOn: isoDay("dueOn: give a day such as 2026-07-31, or leave it out for the usual one.").optional(),
    }),
  },
  keyed: true,
  status: 201,
  answer: z.object({ id: id("Id of the callback") }),
} as const satisfies ApiEndpoint;

import { z } from "zod";
import type { TenantScope } from "@/lib/domain/scope";
import { WORK_TASKS, type WorkTask } from "@/lib/domain/work";
import { makeExport } from "@/lib/services/company-export";
import { mailComplaint, mailOverdue } from "@/lib/services/company-mail/complaint-mail";
import { mailMonth } from "@/lib/services/company-mail/month-mail";
import { mailWebhookOff } from "@/lib/services/company-mail/webhook-mail";
import { deliverWebhook } from "@/lib/services/deliver-webhook";
import { holdForecast } from "@/lib/services/hold-forecast";
import { judgeAllAgain } from "@/lib/services/judge-again";
import { keepForecast } from "@/lib/services/keep-forecast";
import { runLogImport } from "@/lib/services/log-queue";
import { mailPacket } from "@/lib/services/packet-sending";

/** How far a try is. `progress` is what the next try is given when this one does not end. */
export type Report = (at: {
  readonly done: number;
  readonly total: number | null;
  readonly progress: unknown;
}) => Promise<void>;

export type TaskDefinition = {
  /**
   * Whose rights it has: those of the person who asked, as they are when it runs, or, for what concerns the
   * company as a whole and reads no input of a person, an owner's.
   */
  readonly actsFor: "asker" | "company";
  /**
   * Does the work; it may begin again after any step, so what it does twice must be the same as once.
   *
   * @param progress - What the last try reported; `null` at first.
   * @returns What came of it, in words.
   */
  readonly run: (
    scope: TenantScope,
    input: unknown,
    progress: unknown,
    report: Report,
    workId: string,
  ) => Promise<string>;
};

const judged = z
  .object({ done: z.number(), changed: z.number(), after: z.string().nullable() })
  .nullable()
  .catch(null);

const complaint = z.object({
  callbackId: z.uuid(),
  why: z.enum(["came in", "opened again by a log"]),
  version: z.number(),
});
const sentShare = z.object({ jobId: z.uuid(), shareId: z.uuid(), attach: z.boolean() });
const offWebhook = z.object({ webhookId: z.uuid(), deliveryId: z.uuid() });
const asked = z.object({ exportId: z.uuid() });

const ofJob = z.object({
  jobId: z.uuid(),
  changed: z
    .object({ house: z.record(z.string(), z.number()), system: z.record(z.string(), z.number()) })
    .nullable()
    .default(null),
});

const ofLog = z.object({ jobId: z.uuid(), importId: z.uuid() });

const DEFINITIONS: Readonly<Record<WorkTask, TaskDefinition>> = {
  "judge jobs again": {
    actsFor: "company",
    run: (scope, _input, progress, report) =>
      judgeAllAgain(scope, judged.parse(progress), (at, total) =>
        report({ done: at.done, total, progress: at }),
      ),
  },
  "mail about a complaint": {
    actsFor: "company",
    run: (scope, input) => mailComplaint(scope, complaint.parse(input)),
  },
  "mail what is overdue": {
    actsFor: "company",
    run: (scope, input) => mailOverdue(scope, z.object({ today: z.iso.date() }).parse(input)),
  },
  "mail the month": {
    actsFor: "company",
    run: (scope, input) => mailMonth(scope, z.object({ month: z.string() }).parse(input)),
  },
  "mail about a webhook": {
    actsFor: "company",
    run: (scope, input) => mailWebhookOff(scope, offWebhook.parse(input)),
  },
  "deliver webhook": {
    actsFor: "company",
    run: (scope, input) => deliverWebhook(scope, z.object({ deliveryId: z.uuid() }).parse(input)),
  },
  "export everything": {
    actsFor: "asker",
    run: (scope, input, _progress, report) =>
      makeExport(scope, asked.parse(input).exportId, (done, total) =>
        report({ done, total, progress: null }),
      ),
  },
  "hold forecast against log": {
    actsFor: "asker",
    run: (scope, input, _progress, report) => {
      const { jobId, importId } = ofLog.parse(input);
      return holdForecast(scope, jobId, importId, (done, total) => report({ done, total, progress: null }));
    },
  },
  "import log": {
    actsFor: "asker",
    run: (scope, input, _progress, report, workId) => runLogImport(scope, workId, input, report),
  },
  "keep forecast": {
    actsFor: "asker",
    run: (scope, input, _progress, report) => {
      const { jobId, changed } = ofJob.parse(input);
      return keepForecast(scope, jobId, changed, (done, total) => report({ done, total, progress: null }));
    },
  },
  "send packet": {
    actsFor: "asker",
    run: (scope, input) => mailPacket(scope, sentShare.parse(input)),
  },
};

/** All background work by name. */
export const TASKS: ReadonlyMap<string, TaskDefinition> = new Map(
  WORK_TASKS.map((name) => [name, DEFINITIONS[name]]),
);

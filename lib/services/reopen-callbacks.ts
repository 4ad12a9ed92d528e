import { DateTime } from "luxon";
import { callbacks } from "@/lib/db/callbacks";
import { company } from "@/lib/db/company";
import { stageRecords } from "@/lib/db/stage-records";
import { withTenant } from "@/lib/db/with-tenant";
import { CALLBACK_KINDS } from "@/lib/domain/callbacks";
import { todayIn } from "@/lib/domain/days";
import type { CallbackId, JobId } from "@/lib/domain/ids";
import { limitsInForce } from "@/lib/domain/limits";
import type { TenantScope } from "@/lib/domain/scope";
import { analyzeLog, type LogContext, type LogSamples } from "@/lib/engineering/logs";
import { queueComplaintMail } from "./company-mail/complaint-mail";
import { samplesSince } from "./log-days";
import { tellWebhooks } from "./tell-webhooks";

const FIXES_LOOKED_AT = 200;

/**
 * Opens a humidity complaint again when a logger's readings since its fix, long enough for a verdict, are not as dry as
 * the company asks. To be called after a log has been kept. A fix whose log agrees stays as it is: a person closes it.
 *
 * @param log - All the logger has told, with its clock.
 * @param asked - What the log is held against.
 * @returns The callbacks opened again.
 */
export function reopenDisagreeing(
  scope: TenantScope,
  jobId: JobId,
  log: { readonly samples: LogSamples; readonly timeZone: string },
  asked: LogContext,
): Promise<readonly CallbackId[]> {
  return withTenant(scope, async () => {
    await stageRecords(scope).lock(jobId);
    const fixed = (
      await callbacks(scope).list({ jobId, state: null, kind: null }, { take: FIXES_LOOKED_AT, skip: 0 })
    ).filter((one) => one.state !== "open" && one.fixedOn !== null && CALLBACK_KINDS[one.kind].humidity);
    if (fixed.length === 0) return [];
    const limits = limitsInForce(await company(scope).limitOverrides());
    const dueOn = todayIn(log.timeZone);
    const reopened: CallbackId[] = [];
    for (const callback of fixed) {
      if (callback.fixedOn === null) continue;
      // The day of the fix itself is half before it.
      const after = DateTime.fromISO(callback.fixedOn, { zone: log.timeZone }).plus({ days: 1 });
      const since = samplesSince(log.samples, after.toMillis());
      const humidity = since && analyzeLog(since, asked).humidity;
      if (!humidity || humidity.hours < limits["logs.leastHours"]) continue;
      const dryPct = 100 * humidity.dryShare;
      if (dryPct >= limits["logs.dryShareMinPct"]) continue;
      const reason = `The log since ${callback.fixedOn} has ${(humidity.hours - humidity.dryHours).toFixed(0)} of ${humidity.hours.toFixed(0)} hours above ${humidity.limitPct} %: ${dryPct.toFixed(0)} % dry, ${limits["logs.dryShareMinPct"]} % are asked for.`;
      if (callback.reopenedByLog === reason) continue;
      await callbacks(scope).reopen(callback, { reason, dueOn });
      await queueComplaintMail(
        scope,
        { callbackId: callback.id, why: "opened again by a log", version: callback.version + 1 },
        { jobNumber: callback.job.number, reportedOn: callback.reportedOn },
      );
      await tellWebhooks(scope, "callback.opened", `${callback.id} ${callback.version + 1}`, {
        jobId,
        jobNumber: callback.job.number,
        callbackId: callback.id,
        kind: callback.kind,
        reportedOn: callback.reportedOn,
        again: true,
      });
      reopened.push(callback.id);
    }
    return reopened;
  });
}

import { callbacks } from "@/lib/db/callbacks";
import { company } from "@/lib/db/company";
import { livedDays } from "@/lib/db/lived-days";
import { stageRecords } from "@/lib/db/stage-records";
import { withTenant } from "@/lib/db/with-tenant";
import { CALLBACK_KINDS } from "@/lib/domain/callbacks";
import type { CallbackId, JobId } from "@/lib/domain/ids";
import { limitsInForce } from "@/lib/domain/limits";
import { humidSince } from "@/lib/domain/lived-days";
import type { TenantScope } from "@/lib/domain/scope";

const FIXES_LOOKED_AT = 200;

/**
 * Opens a humidity complaint again when the log since its fix, long enough for a verdict, is not as dry as the
 * company asks. To be called after a log has been kept. A fix whose log agrees stays as it is: a person closes it.
 *
 * @returns The callbacks opened again.
 */
export function reopenDisagreeing(
  scope: TenantScope,
  jobId: JobId,
  limitPct: number,
  today: string,
): Promise<readonly CallbackId[]> {
  return withTenant(scope, async () => {
    await stageRecords(scope).lock(jobId);
    const fixed = (
      await callbacks(scope).list({ jobId, state: null, kind: null }, { take: FIXES_LOOKED_AT, skip: 0 })
    ).filter((one) => one.state !== "open" && one.fixedOn !== null && CALLBACK_KINDS[one.kind].humidity);
    if (fixed.length === 0) return [];
    const limits = limitsInForce(await company(scope).limitOverrides());
    const reopened: CallbackId[] = [];
    for (const callback of fixed) {
      if (callback.fixedOn === null) continue;
      // The day of the fix itself is half before it.
      const from = new Date(Date.parse(`${callback.fixedOn}T00:00:00Z`) + 86_400_000)
        .toISOString()
        .slice(0, 10);
      const since = humidSince(await livedDays(scope, jobId, { from, to: null }), limitPct);
      if (!since || since.hours < limits["logs.leastHours"]) continue;
      if (since.dryPct >= limits["logs.dryShareMinPct"]) continue;
      const reason = `The log since ${callback.fixedOn} has ${since.hoursAbove.toFixed(0)} of ${since.hours.toFixed(0)} hours above ${limitPct} %: ${since.dryPct.toFixed(0)} % dry, ${limits["logs.dryShareMinPct"]} % are asked for.`;
      if (callback.reopenedByLog === reason) continue;
      await callbacks(scope).reopen(callback, { reason, dueOn: today });
      reopened.push(callback.id);
    }
    return reopened;
  });
}

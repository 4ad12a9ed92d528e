import { company } from "@/lib/db/company";
import { dueReviews } from "@/lib/db/due-reviews";
import { webhooks } from "@/lib/db/webhooks";
import { withTenant } from "@/lib/db/with-tenant";
import { dayAfter, todayIn } from "@/lib/domain/days";
import type { TenantScope } from "@/lib/domain/scope";
import { tellWebhooks } from "./tell-webhooks";

/** A server that was away over a weekend still tells; a webhook added today is not told of years. */
const DAYS_BACK = 3;

/** Tells of humidity reviews that have come due by the company's clock, each due day once. To be called every hour. */
export function tellDueReviews(scope: TenantScope, now = new Date()): Promise<void> {
  return withTenant(scope, async () => {
    const wanted = (await webhooks(scope).list()).some(
      ({ pausedAt, events }) => pausedAt === null && events.includes("review.due"),
    );
    if (!wanted) return;
    const today = todayIn((await company(scope).get()).timeZone, now);
    for (const due of await dueReviews(scope, dayAfter(today, -DAYS_BACK), today))
      await tellWebhooks(scope, "review.due", `${due.jobId} ${due.dueOn}`, due);
  });
}

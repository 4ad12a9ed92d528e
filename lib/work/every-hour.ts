import { scopesOfCompanies } from "@/lib/auth/scope";
import { unscopedRateLimit } from "@/lib/db/unscoped/rate-limit";
import { failureFacts } from "@/lib/server/failure";
import { log } from "@/lib/server/request-log";
import { removeEndedExports } from "@/lib/services/company-export";
import { queueDueMail } from "@/lib/services/company-mail/due-mail";
import { sweepAtNight } from "@/lib/services/sweep-files";
import { tellDueReviews } from "@/lib/services/tell-due-reviews";

/** The queue's own clock, in its crontab form: once an hour over all servers, and once for hours in which none ran. */
export const EVERY_HOUR = "every_hour";
export const CRONTAB = `7 * * * * ${EVERY_HOUR} ?fill=1h&max=3`;

/** What is due by the clock of each company. What one company lacks does not keep the others waiting. */
export async function everyHour(now = new Date()): Promise<void> {
  await unscopedRateLimit.sweep();
  for (const scope of await scopesOfCompanies()) {
    try {
      await queueDueMail(scope, now);
      await tellDueReviews(scope, now);
      await removeEndedExports(scope, now);
      await sweepAtNight(scope, now);
    } catch (error) {
      log().error({ work: EVERY_HOUR, error: failureFacts(error) });
    }
  }
}

import { company } from "@/lib/db/company";
import { withTenant } from "@/lib/db/with-tenant";
import { todayIn } from "@/lib/domain/days";
import type { TenantScope } from "@/lib/domain/scope";
import { queueOverdueMail } from "./complaint-mail";
import { queueMonthMail } from "./month-mail";

/** Nobody is woken by a mail. */
const FROM_HOUR = 7;

/** Asks for what is due by the company's own clock. To be called every hour; what was asked for is not asked for again. */
export function queueDueMail(scope: TenantScope, now = new Date()): Promise<void> {
  return withTenant(scope, async () => {
    const { timeZone } = await company(scope).get();
    const hour = Number(new Intl.DateTimeFormat("en-GB", { timeZone, hour: "2-digit" }).format(now));
    if (hour < FROM_HOUR) return;
    const today = todayIn(timeZone, now);
    await queueOverdueMail(scope, today);
    await queueMonthMail(scope, today);
  });
}

import { company } from "@/lib/db/company";
import { todayIn } from "@/lib/domain/days";
import type { TenantScope } from "@/lib/domain/scope";

/** Today on the company's own clock, as an ISO day: a server's midnight is not the house's. */
export async function companyToday(scope: TenantScope, now = new Date()): Promise<string> {
  return todayIn((await company(scope).get()).timeZone, now);
}

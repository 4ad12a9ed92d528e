import { jobs } from "@/lib/db/jobs";
import { withTenant } from "@/lib/db/with-tenant";
import { asId } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import type { ScheduleJobInput } from "@/lib/schemas/job";
import { judgeJob } from "./judge-again";

/** Sets who is assigned and when it is due, and with it what needs attention. */
export function scheduleJob(scope: TenantScope, input: ScheduleJobInput): Promise<void> {
  const id = asId<"job">(input.jobId);
  return withTenant(scope, async () => {
    await jobs(scope).schedule(id, input);
    await judgeJob(scope, id);
  });
}

import type { TenantScope } from "@/lib/domain/scope";
import { appendActivity } from "./activity";
import { withTenant } from "./with-tenant";

type SentLog = {
  readonly jobId: string;
  readonly workId: string;
  readonly fileName: string;
  readonly sourceName: string;
};

/** Tells on the trail who sent a log that is still to be read: the import itself names the person alone. */
export function noteSentLog(scope: TenantScope, { jobId, workId, ...log }: SentLog): Promise<void> {
  return withTenant(scope, (tx) =>
    appendActivity(tx, scope, {
      action: "log sent",
      entity: "log import",
      entityId: workId,
      jobId,
      after: log,
    }),
  );
}

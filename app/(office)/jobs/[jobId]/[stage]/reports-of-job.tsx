import { DesignReports } from "@/components/stage/design-reports";
import { may } from "@/lib/domain/roles";
import type { TenantScope } from "@/lib/domain/scope";
import { listReports } from "@/lib/services/design-reports";

/** The reports of a job, to read and, also beside a signed load summary, to add. */
export async function ReportsOfJob({
  scope,
  jobId,
}: {
  readonly scope: TenantScope;
  readonly jobId: string;
}) {
  const reports = await listReports(scope, jobId);
  return <DesignReports jobId={jobId} reports={reports} mayEdit={may(scope.role, "design.edit")} />;
}

import { VersionNotice } from "@/components/catalog/version-notice";
import type { TenantScope } from "@/lib/domain/scope";
import { jobControlVersion, jobVersion } from "@/lib/services/catalog-jobs";
import type { StageView } from "@/lib/services/job-view";
import { moveJob, moveJobsThermostat } from "../../../catalog/actions";

/** Which version of the catalog's model or thermostat the record rests on, with the way to the newer one. */
export async function VersionOfRecord({ scope, view }: { scope: TenantScope; view: StageView }) {
  const { job, stage, record, context, control } = view;
  const expectedVersion = view.mayEdit ? (record?.version ?? null) : null;
  const shared = { jobId: job.id, expectedVersion };
  if (stage === "equipment_selection" && context.model) {
    const version = await jobVersion(scope, context.model);
    return <VersionNotice {...shared} version={version} move={moveJob} />;
  }
  if (stage === "control_setup" && control) {
    const version = await jobControlVersion(scope, control);
    return <VersionNotice {...shared} version={version} move={moveJobsThermostat} />;
  }
  return null;
}

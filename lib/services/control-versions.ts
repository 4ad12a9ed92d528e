import { catalog } from "@/lib/db/catalog";
import { type ControlVersion, controlVersions } from "@/lib/db/control-versions";
import { type Retired, retiredOf } from "@/lib/db/retired";
import { stageRecords } from "@/lib/db/stage-records";
import { withTenant } from "@/lib/db/with-tenant";
import type { ControlModel } from "@/lib/domain/catalog";
import { controlChanges } from "@/lib/domain/catalog-changes";
import { asId, isUuid } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import { AppError, notFound } from "@/lib/errors";
import type { MoveToControlInput } from "@/lib/schemas/catalog";
import type { JobVersion } from "./catalog-jobs";
import { saveStage } from "./stages";

export type ControlView = {
  readonly control: ControlModel;
  readonly versions: readonly ControlVersion[];
};

/** One version of a thermostat with the others and the jobs that rest on them. */
export function controlView(scope: TenantScope, id: string): Promise<ControlView> {
  return withTenant(scope, async () => {
    const controlId = asId<"control model">(id);
    const control = isUuid(id) ? await catalog(scope).findControl(controlId) : null;
    if (!control) throw notFound();
    return { control, versions: await controlVersions(scope).list(controlId) };
  });
}

/** The version of its thermostat a job rests on, and the newer one it could move to with what would change. */
export function jobControlVersion(scope: TenantScope, control: ControlModel): Promise<JobVersion> {
  return withTenant(scope, async () => {
    const versions = await controlVersions(scope).list(control.id);
    const own = versions.find(({ id }) => id === control.id);
    const newest = versions.find(({ retired }) => !retired) ?? null;
    const version = own?.version ?? 1;
    const next =
      newest !== null && newest.version > version ? await catalog(scope).findControl(newest.id) : null;
    return {
      name: `${control.maker} ${control.name}`,
      version,
      retired: own?.retired === true && newest === null,
      newer:
        newest === null || next === null
          ? null
          : { id: next.id, version: newest.version, changes: controlChanges(control, next) },
    };
  });
}

/** Lets a job's control setup rest on another version of the same thermostat; the trail tells of it as of any change. */
export function moveJobToControl(scope: TenantScope, input: MoveToControlInput): Promise<void> {
  return withTenant(scope, async () => {
    const jobId = asId<"job">(input.jobId);
    await stageRecords(scope).lock(jobId);
    const record = (await stageRecords(scope).latest(jobId)).control_setup;
    const to = asId<"control model">(input.controlId);
    const family = await controlVersions(scope).list(to);
    const chosen = record?.inputs.controlModelId ?? null;
    if (!record || !family.some(({ id }) => id === chosen)) throw notFound();
    if (record.state === "signed") {
      throw new AppError(
        "SIGNED_RECORD",
        "Control setup is signed. Reopen it with a reason, then move to the newer version.",
      );
    }
    await saveStage(scope, ["control_setup"], {
      jobId: input.jobId,
      stage: "control_setup",
      expectedVersion: input.expectedVersion,
      inputs: { ...record.inputs, controlModelId: to },
    });
  });
}

export function bringControlBack(scope: TenantScope, controlId: string): Promise<void> {
  return controlVersions(scope).bringBack(asId<"control model">(controlId));
}

/** What is off the lists of the catalog and can be brought back. */
export const retiredView = (scope: TenantScope): Promise<readonly Retired[]> => retiredOf(scope);

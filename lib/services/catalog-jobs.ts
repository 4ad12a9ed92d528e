import { catalog } from "@/lib/db/catalog";
import { catalogVersions } from "@/lib/db/catalog-versions";
import { stageRecords } from "@/lib/db/stage-records";
import { withTenant } from "@/lib/db/with-tenant";
import type { EquipmentModel } from "@/lib/domain/catalog";
import { modelChanges } from "@/lib/domain/catalog-changes";
import { asId } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import { AppError, notFound } from "@/lib/errors";
import type { MoveToVersionInput } from "@/lib/schemas/catalog";
import { saveStage } from "./stages";

/** The version a job rests on, and the newer one it could move to with what would change. */
export type JobVersion = {
  readonly name: string;
  readonly version: number;
  readonly retired: boolean;
  readonly newer: {
    readonly id: string;
    readonly version: number;
    readonly changes: readonly string[];
  } | null;
};

export function jobVersion(scope: TenantScope, model: EquipmentModel): Promise<JobVersion> {
  return withTenant(scope, async () => {
    const versions = await catalogVersions(scope).list(model.familyId);
    const newest = versions.find(({ retired }) => !retired) ?? null;
    const next =
      newest !== null && newest.version > model.version
        ? await catalog(scope).findEquipment(newest.id)
        : null;
    return {
      name: `${model.maker} ${model.name}`,
      version: model.version,
      retired: versions.find(({ id }) => id === model.id)?.retired === true && newest === null,
      newer:
        next === null ? null : { id: next.id, version: next.version, changes: modelChanges(model, next) },
    };
  });
}

/** Lets a job's equipment selection rest on another version of the same model; the trail tells of it as of any change. */
export function moveJobToVersion(scope: TenantScope, input: MoveToVersionInput): Promise<void> {
  return withTenant(scope, async () => {
    const jobId = asId<"job">(input.jobId);
    await stageRecords(scope).lock(jobId);
    const record = (await stageRecords(scope).latest(jobId)).equipment_selection;
    const to = await catalog(scope).findEquipment(asId<"equipment model">(input.modelId));
    const chosen = record?.inputs.equipmentModelId ?? null;
    const from = chosen === null ? null : await catalog(scope).findEquipment(asId<"equipment model">(chosen));
    if (!record || !to || from?.familyId !== to.familyId) throw notFound();
    if (record.state === "signed") {
      throw new AppError(
        "SIGNED_RECORD",
        "Equipment selection is signed. Reopen it with a reason, then move to the newer version.",
      );
    }
    await saveStage(scope, ["equipment_selection"], {
      jobId: input.jobId,
      stage: "equipment_selection",
      expectedVersion: input.expectedVersion,
      inputs: { ...record.inputs, equipmentModelId: to.id },
    });
  });
}

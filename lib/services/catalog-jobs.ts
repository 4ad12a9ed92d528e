import { catalog } from "@/lib/db/catalog";
import { catalogVersions, VERSIONED, type VersionedKind } from "@/lib/db/catalog-versions";
import { stageRecords } from "@/lib/db/stage-records";
import { withTenant } from "@/lib/db/with-tenant";
import type { ControlModel, EquipmentModel } from "@/lib/domain/catalog";
import { controlChanges, modelChanges } from "@/lib/domain/catalog-changes";
import { asId } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import { STAGE_NAMES } from "@/lib/domain/stages";
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

export const jobVersion = (scope: TenantScope, model: EquipmentModel): Promise<JobVersion> =>
  versionOf(scope, "equipment", model, (id) => catalog(scope).findEquipment(asId(id)), modelChanges);

export const jobControlVersion = (scope: TenantScope, control: ControlModel): Promise<JobVersion> =>
  versionOf(scope, "thermostat", control, (id) => catalog(scope).findControl(asId(id)), controlChanges);

function versionOf<Model extends Pick<ControlModel, "maker" | "name"> & { readonly id: string }>(
  scope: TenantScope,
  kind: VersionedKind,
  model: Model,
  find: (id: string) => Promise<Model | null>,
  changes: (from: Model, to: Model) => readonly string[],
): Promise<JobVersion> {
  return withTenant(scope, async () => {
    const versions = await catalogVersions(scope, kind).list(model.id);
    const own = versions.find(({ id }) => id === model.id);
    const newest = versions.find(({ retired }) => !retired);
    const version = own?.version ?? 1;
    const next = newest && newest.version > version ? await find(newest.id) : null;
    return {
      name: `${model.maker} ${model.name}`,
      version,
      retired: own?.retired === true && newest === undefined,
      newer: newest && next ? { id: next.id, version: newest.version, changes: changes(model, next) } : null,
    };
  });
}

/** Lets a job's equipment selection rest on another version of the same model; the trail tells of it as of any change. */
export const moveJobToVersion = (scope: TenantScope, input: MoveToVersionInput): Promise<void> =>
  moveJobTo(scope, "equipment", input);

/** The same of a job's control setup and its thermostat. */
export const moveJobToControl = (scope: TenantScope, input: MoveToVersionInput): Promise<void> =>
  moveJobTo(scope, "thermostat", input);

function moveJobTo(
  scope: TenantScope,
  kind: VersionedKind,
  { jobId, expectedVersion, versionId }: MoveToVersionInput,
): Promise<void> {
  const { stage, input } = VERSIONED[kind];
  return withTenant(scope, async () => {
    await stageRecords(scope).lock(asId<"job">(jobId));
    const record = (await stageRecords(scope).latest(asId<"job">(jobId)))[stage];
    const inputs: Readonly<Record<string, unknown>> = record?.inputs ?? {};
    const family = await catalogVersions(scope, kind).list(versionId);
    if (!record || !family.some(({ id }) => id === inputs[input])) throw notFound();
    if (record.state === "signed") {
      throw new AppError(
        "SIGNED_RECORD",
        `${STAGE_NAMES[stage]} is signed. Reopen it with a reason, then move to the newer version.`,
      );
    }
    await saveStage(scope, [stage], {
      jobId,
      stage,
      expectedVersion,
      inputs: { ...record.inputs, [input]: versionId },
    });
  });
}

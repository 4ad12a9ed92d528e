import { catalog } from "@/lib/db/catalog";
import { catalogVersions } from "@/lib/db/catalog-versions";
import { instruments } from "@/lib/db/instruments";
import { withTenant } from "@/lib/db/with-tenant";
import type { EquipmentModel } from "@/lib/domain/catalog";
import { modelChanges } from "@/lib/domain/catalog-changes";
import { asId, type ControlModelId, type EquipmentModelId, type InstrumentId } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import { AppError, invalidInput, notFound } from "@/lib/errors";
import type {
  ImportTableInput,
  SaveControlInput,
  SaveEquipmentInput,
  SaveInstrumentInput,
} from "@/lib/schemas/catalog";
import { checkTable, mappingProblems, TABLE_KIND_NAMES } from "@/lib/schemas/catalog-table";

/** Keeps a model. A change is always a new version: whatever rests on the old one keeps it. */
export function saveEquipment(scope: TenantScope, input: SaveEquipmentInput): Promise<EquipmentModelId> {
  const { modelId, ...facts } = input;
  return withTenant(scope, async () => {
    if (modelId === null) {
      return catalog(scope).addEquipment({
        ...facts,
        familyId: null,
        demoData: false,
        performance: [],
        fan: [],
      });
    }
    const before = await getModel(scope, modelId);
    const next = { ...before, ...facts };
    const changes = modelChanges(before, next);
    if (changes.length === 0) return before.id;
    return nextVersion(scope, before, next, facts.sourceNote, "equipment changed", changes);
  });
}

/** A model of its own that starts as a copy, tables included. */
export function duplicateEquipment(scope: TenantScope, modelId: string): Promise<EquipmentModelId> {
  return withTenant(scope, async () => {
    const { id: _id, version: _version, ...from } = await getModel(scope, modelId);
    return catalog(scope).addEquipment({
      ...from,
      name: `${from.name} (copy)`,
      familyId: null,
      sourceNote: `Copied from ${from.maker} ${from.name}`,
    });
  });
}

export type Imported = {
  readonly modelId: string;
  readonly kept: number;
  readonly refused: number;
};

/** Reads a block again as the screen did, and keeps its good rows in a new version of the model. */
export function importTable(scope: TenantScope, input: ImportTableInput): Promise<Imported> {
  const { kind, mapping, how } = input;
  return withTenant(scope, async () => {
    const before = await getModel(scope, input.modelId);
    const problems = mappingProblems(kind, mapping);
    if (problems.length > 0)
      throw invalidInput(problems.map(({ quantity, message }) => ({ field: `map-${quantity}`, message })));
    const existing = how === "add" ? before : { performance: [], fan: [] };
    const table = checkTable(kind, { headings: input.headings, rows: input.rows }, mapping, existing);
    if (table.goodRows === 0) {
      throw new AppError("INVALID_INPUT", "No row can be kept yet. Mend a refused cell, then import again.");
    }
    const next: EquipmentModel = {
      ...before,
      performance:
        kind === "performance" ? [...existing.performance, ...table.performance] : before.performance,
      fan: kind === "fan" ? [...existing.fan, ...table.fan] : before.fan,
    };
    const changes = modelChanges(before, next);
    if (changes.length === 0) throw new AppError("CONFLICT", "The model's table already says exactly this.");
    const modelId = await nextVersion(
      scope,
      before,
      next,
      `Imported ${TABLE_KIND_NAMES[kind]}`,
      `equipment ${TABLE_KIND_NAMES[kind]} imported`,
      changes,
    );
    return { modelId, kept: table.goodRows, refused: table.allRows - table.goodRows };
  });
}

/** Takes the newest version back, so that the one before it is the newest again. A job that rests on it keeps it from being taken. */
export function undoVersion(scope: TenantScope, modelId: string): Promise<EquipmentModelId> {
  return withTenant(scope, async () => {
    const model = await getModel(scope, modelId);
    const versions = (await catalogVersions(scope, "equipment").list(model.id)).filter(
      ({ retired }) => !retired,
    );
    const [newest, before] = versions;
    if (newest?.id !== model.id) throw new AppError("CONFLICT", "Only the newest version can be taken back.");
    if (before === undefined)
      throw new AppError("CONFLICT", "This is the first version; there is nothing to go back to.");
    const [job] = newest.jobs;
    if (job !== undefined) {
      throw new AppError(
        "CONFLICT",
        `Job ${job.number} already rests on this version. Change the model instead.`,
      );
    }
    await catalogVersions(scope, "equipment").takeBack(model.id, `Back to version ${before.version}`);
    return asId<"equipment model">(before.id);
  });
}

/** Takes a model off the lists. Jobs that rest on it keep it. */
export const retireEquipment = (scope: TenantScope, modelId: string): Promise<void> =>
  catalogVersions(scope, "equipment").retire(modelId);

export const bringEquipmentBack = (scope: TenantScope, modelId: string): Promise<void> =>
  catalogVersions(scope, "equipment").bringBack(modelId);

/** Keeps a thermostat; a change is a new version. */
export function saveControl(
  scope: TenantScope,
  { controlId, ...control }: SaveControlInput,
): Promise<ControlModelId> {
  return catalog(scope).addControl({
    ...control,
    demoData: false,
    ...(controlId === null ? {} : { follows: asId<"control model">(controlId) }),
  });
}

/** Takes a thermostat off the lists. Jobs that rest on it keep it. */
export const retireControl = (scope: TenantScope, controlId: string): Promise<void> =>
  catalogVersions(scope, "thermostat").retire(controlId);

export const bringControlBack = (scope: TenantScope, controlId: string): Promise<void> =>
  catalogVersions(scope, "thermostat").bringBack(controlId);

export async function saveInstrument(scope: TenantScope, input: SaveInstrumentInput): Promise<InstrumentId> {
  const { instrumentId, expectedVersion, ...facts } = input;
  if (instrumentId === null) return instruments(scope).add(facts);
  const id = asId<"instrument">(instrumentId);
  await instruments(scope).change(id, expectedVersion ?? 0, facts);
  return id;
}

export function retireInstrument(scope: TenantScope, instrumentId: string, retired: boolean): Promise<void> {
  return instruments(scope).setRetired(asId<"instrument">(instrumentId), retired);
}

async function getModel(scope: TenantScope, modelId: string): Promise<EquipmentModel> {
  const model = await catalog(scope).findEquipment(asId<"equipment model">(modelId));
  if (!model) throw notFound();
  return model;
}

function nextVersion(
  scope: TenantScope,
  before: EquipmentModel,
  next: EquipmentModel,
  sourceNote: string,
  action: string,
  changes: readonly string[],
): Promise<EquipmentModelId> {
  const { id: _id, version: _version, ...model } = next;
  return catalog(scope).addEquipment({
    ...model,
    familyId: before.familyId,
    madeFromVersion: before.version,
    sourceNote,
    trail: { action, after: { maker: next.maker, name: next.name, changes: [...changes] } },
  });
}

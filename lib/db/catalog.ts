// Longer than usual because equipment and thermostats share how versions of a family are kept.
import {
  type CompressorKind,
  type ControlData,
  type ControlModel,
  controlDataSchema,
  type EquipmentModel,
  equipmentDataSchema,
  type PerformanceRow,
} from "@/lib/domain/catalog";
import { asId, type ControlModelId, type EquipmentModelId } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import { notFound } from "@/lib/errors";
import { appendActivity } from "./activity";
import { movedOn } from "./catalog-errors";
import type { Prisma } from "./generated/client";
import { asJson } from "./json";
import { keptVersions } from "./kept-versions";
import { type TenantTransaction, withTenant } from "./with-tenant";

export type NewEquipmentModel = Omit<EquipmentModel, "id" | "familyId" | "version"> & {
  readonly sourceNote: string;
  /** Given when this is the next version of a model that exists. */
  readonly familyId: string | null;
  /** The version it was made from: refused when another has come since. */
  readonly madeFromVersion?: number;
  /** What the trail says was done, and what was there before. */
  readonly trail?: { readonly action: string; readonly before?: unknown; readonly after?: unknown };
};

const SCHEMA_VERSION = 1;
const WITH_TABLES = {
  performancePoints: true,
  fanPoints: true,
} as const satisfies Prisma.EquipmentModelInclude;
type Row = Prisma.EquipmentModelGetPayload<{ include: typeof WITH_TABLES }>;

// A version's row and tables are never changed (the database refuses it), and what is read here tells nothing of
// whether it is on the lists: every reading of a phone would otherwise read hundreds of rows again.
const equipmentKept = keptVersions<EquipmentModel>(200);
const controlsKept = keptVersions<ControlModel>(200);

export function catalog(scope: TenantScope) {
  const own = { tenantId: scope.tenantId };
  return {
    /** Every model in its newest version, without its tables. */
    listEquipment: (): Promise<readonly Omit<EquipmentModel, "performance" | "fan">[]> =>
      withTenant(scope, async (tx) => {
        const rows = await tx.equipmentModel.findMany({
          where: { ...own, retiredAt: null },
          orderBy: [{ familyId: "asc" }, { version: "desc" }],
          distinct: ["familyId"],
        });
        return rows.map((row) => toModel({ ...row, performancePoints: [], fanPoints: [] })).sort(byName);
      }),

    /** Every kind of equipment there is or was, under the name of its newest version. */
    listFamilies: (): Promise<readonly { readonly id: string; readonly name: string }[]> =>
      withTenant(scope, async (tx) => {
        const rows = await tx.equipmentModel.findMany({
          where: own,
          orderBy: [{ familyId: "asc" }, { version: "desc" }],
          distinct: ["familyId"],
          select: { familyId: true, maker: true, name: true },
        });
        return rows
          .map(({ familyId, maker, name }) => ({ id: familyId, name: `${maker} ${name}` }))
          .sort((one, other) => one.name.localeCompare(other.name));
      }),

    findEquipment: (id: EquipmentModelId): Promise<EquipmentModel | null> =>
      withTenant(scope, async (tx) => {
        const kept = equipmentKept.get(scope, id);
        if (kept) return kept;
        const row = await tx.equipmentModel.findFirst({ where: { ...own, id }, include: WITH_TABLES });
        return row && equipmentKept.keep(scope, id, toModel(row));
      }),

    addEquipment: (model: NewEquipmentModel): Promise<EquipmentModelId> =>
      withTenant(scope, async (tx) => {
        const familyId = model.familyId ?? crypto.randomUUID();
        const last = await tx.equipmentModel.aggregate({
          where: { ...own, familyId },
          _max: { version: true },
        });
        if (model.madeFromVersion !== undefined) {
          const newest = await tx.equipmentModel.findFirst({
            where: { ...own, familyId, retiredAt: null },
            orderBy: { version: "desc" },
            select: { version: true },
          });
          if (newest?.version !== model.madeFromVersion) throw movedOn();
        }
        const row = await tx.equipmentModel.create({
          data: {
            ...own,
            familyId,
            version: (last._max.version ?? 0) + 1,
            maker: model.maker,
            name: model.name,
            modelNumber: model.modelNumber,
            compressorKind: model.compressorKind,
            nominalTons: model.nominalTons,
            refrigerant: model.refrigerant,
            data: asJson(model.data),
            schemaVersion: SCHEMA_VERSION,
            sourceNote: model.sourceNote,
            demoData: model.demoData,
            createdBy: scope.userId,
          },
          select: { id: true },
        });
        await tx.performancePoint.createMany({
          data: model.performance.map((point) => ({ ...own, modelId: row.id, ...point })),
        });
        await tx.fanPoint.createMany({
          data: model.fan.map((point) => ({ ...own, modelId: row.id, ...point })),
        });
        await appendActivity(tx, scope, {
          action: model.trail?.action ?? "equipment added",
          entity: "equipment model",
          entityId: row.id,
          before: model.trail?.before,
          after: model.trail?.after ?? {
            maker: model.maker,
            name: model.name,
            rows: model.performance.length,
          },
        });
        return asId<"equipment model">(row.id);
      }),

    /** Every thermostat in its newest version; `all`: every version, retired ones too, for jobs that rest on them. */
    listControls: (which: "in use" | "all" = "in use"): Promise<readonly ControlModel[]> =>
      withTenant(scope, async (tx) => {
        const rows = await tx.controlModel.findMany({
          where: { ...own, ...(which === "all" ? {} : { retiredAt: null }) },
          orderBy: [{ familyId: "asc" }, { version: "desc" }],
          ...(which === "all" ? {} : { distinct: ["familyId" as const] }),
        });
        return rows.map(toControl).sort(byName);
      }),

    /** In whichever version, retired or not. */
    findControl: (id: ControlModelId): Promise<ControlModel | null> =>
      withTenant(scope, async (tx) => {
        const kept = controlsKept.get(scope, id);
        if (kept) return kept;
        const row = await tx.controlModel.findFirst({ where: { ...own, id } });
        return row && controlsKept.keep(scope, id, toControl(row));
      }),

    addControl: (model: {
      readonly maker: string;
      readonly name: string;
      readonly demoData: boolean;
      readonly data: ControlData;
      /** The version this one follows; refused when another has come since. */
      readonly follows?: ControlModelId;
    }): Promise<ControlModelId> =>
      withTenant(scope, async (tx) => {
        const before = model.follows ? await newestControl(tx, scope, model.follows) : null;
        const row = await tx.controlModel.create({
          data: {
            ...own,
            familyId: before?.familyId ?? crypto.randomUUID(),
            version: (before?.version ?? 0) + 1,
            maker: model.maker,
            name: model.name,
            demoData: model.demoData,
            data: asJson(model.data),
            schemaVersion: SCHEMA_VERSION,
            createdBy: scope.userId,
          },
          select: { id: true },
        });
        await appendActivity(tx, scope, {
          action: before ? "thermostat changed" : "thermostat added",
          entity: "control model",
          entityId: row.id,
          ...(before ? { before: { maker: before.maker, name: before.name, ...labelsOf(before.data) } } : {}),
          after: { maker: model.maker, name: model.name, ...labelsOf(model.data) },
        });
        return asId<"control model">(row.id);
      }),
  };
}

/** The newest version of a family, which must be the one named. */
async function newestControl(tx: TenantTransaction, scope: TenantScope, id: ControlModelId) {
  const own = { tenantId: scope.tenantId };
  const row = await tx.controlModel.findFirst({ where: { ...own, id } });
  if (!row) throw notFound();
  const newest = await tx.controlModel.findFirst({
    where: { ...own, familyId: row.familyId },
    orderBy: { version: "desc" },
    select: { id: true },
  });
  if (newest?.id !== id) throw movedOn();
  return row;
}

function labelsOf(data: unknown): Readonly<Record<string, unknown>> {
  const { stages, makerLabels } = controlDataSchema.parse(data);
  return { stages, ...makerLabels };
}

function byName(a: { maker: string; name: string }, b: { maker: string; name: string }): number {
  return a.maker.localeCompare(b.maker) || a.name.localeCompare(b.name);
}

type ControlRow = Prisma.ControlModelGetPayload<Record<never, never>>;

function toControl({ id, maker, name, demoData, data }: ControlRow): ControlModel {
  return { id: asId<"control model">(id), maker, name, demoData, data: controlDataSchema.parse(data) };
}

function toModel(row: Row): EquipmentModel {
  return {
    id: asId<"equipment model">(row.id),
    familyId: row.familyId,
    version: row.version,
    maker: row.maker,
    name: row.name,
    modelNumber: row.modelNumber,
    compressorKind: row.compressorKind as CompressorKind,
    nominalTons: row.nominalTons,
    refrigerant: row.refrigerant,
    demoData: row.demoData,
    data: equipmentDataSchema.parse(row.data),
    performance: row.performancePoints.map(({ tenantId: _t, id: _i, modelId: _m, mode, ...point }) => ({
      ...point,
      mode: mode as PerformanceRow["mode"],
    })),
    fan: row.fanPoints
      .map(({ tenantId: _t, id: _i, modelId: _m, ...point }) => point)
      .sort(
        (a, b) =>
          a.airflowSetting.localeCompare(b.airflowSetting) || a.externalStaticInWc - b.externalStaticInWc,
      ),
  };
}

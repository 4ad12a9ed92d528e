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
import { appendActivity } from "./activity";
import type { Prisma } from "./generated/client";
import { asJson } from "./json";
import { withTenant } from "./with-tenant";

export type NewEquipmentModel = Omit<EquipmentModel, "id" | "familyId" | "version"> & {
  readonly sourceNote: string;
  /** Given when this is the next version of a model that exists. */
  readonly familyId: string | null;
};

const SCHEMA_VERSION = 1;
const WITH_TABLES = {
  performancePoints: true,
  fanPoints: true,
} as const satisfies Prisma.EquipmentModelInclude;
type Row = Prisma.EquipmentModelGetPayload<{ include: typeof WITH_TABLES }>;

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

    findEquipment: (id: EquipmentModelId): Promise<EquipmentModel | null> =>
      withTenant(scope, async (tx) => {
        const row = await tx.equipmentModel.findFirst({ where: { ...own, id }, include: WITH_TABLES });
        return row ? toModel(row) : null;
      }),

    addEquipment: (model: NewEquipmentModel): Promise<EquipmentModelId> =>
      withTenant(scope, async (tx) => {
        const familyId = model.familyId ?? crypto.randomUUID();
        const last = await tx.equipmentModel.aggregate({
          where: { ...own, familyId },
          _max: { version: true },
        });
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
          action: "equipment added",
          entity: "equipment model",
          entityId: row.id,
          after: { maker: model.maker, name: model.name, rows: model.performance.length },
        });
        return asId<"equipment model">(row.id);
      }),

    listControls: (): Promise<readonly ControlModel[]> =>
      withTenant(scope, async (tx) => {
        const rows = await tx.controlModel.findMany({
          where: { ...own, retiredAt: null },
          orderBy: [{ maker: "asc" }, { name: "asc" }],
        });
        return rows.map((row) => ({
          id: asId<"control model">(row.id),
          maker: row.maker,
          name: row.name,
          demoData: row.demoData,
          data: controlDataSchema.parse(row.data),
        }));
      }),

    addControl: (model: {
      readonly maker: string;
      readonly name: string;
      readonly demoData: boolean;
      readonly data: ControlData;
    }): Promise<ControlModelId> =>
      withTenant(scope, async (tx) => {
        const row = await tx.controlModel.create({
          data: {
            ...own,
            familyId: crypto.randomUUID(),
            version: 1,
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
          action: "thermostat added",
          entity: "control model",
          entityId: row.id,
          after: { maker: model.maker, name: model.name },
        });
        return asId<"control model">(row.id);
      }),
  };
}

function byName(a: { maker: string; name: string }, b: { maker: string; name: string }): number {
  return a.maker.localeCompare(b.maker) || a.name.localeCompare(b.name);
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

import { accuracySchema, type Instrument } from "@/lib/domain/catalog";
import { asId, type InstrumentId } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import { appendActivity } from "./activity";
import { asDate, asDay, asJson } from "./json";
import { withTenant } from "./with-tenant";

export function instruments(scope: TenantScope) {
  return {
    list: (): Promise<readonly Instrument[]> =>
      withTenant(scope, async (tx) => {
        const rows = await tx.instrument.findMany({
          where: { tenantId: scope.tenantId, retiredAt: null },
          orderBy: { name: "asc" },
        });
        return rows.map((row) => ({
          id: asId<"instrument">(row.id),
          name: row.name,
          kind: row.kind,
          serialNumber: row.serialNumber,
          accuracy: accuracySchema.parse(row.accuracy),
          calibratedOn: asDay(row.calibratedOn),
          calibrationDueOn: asDay(row.calibrationDueOn),
        }));
      }),

    add: (instrument: Omit<Instrument, "id">): Promise<InstrumentId> =>
      withTenant(scope, async (tx) => {
        const row = await tx.instrument.create({
          data: {
            tenantId: scope.tenantId,
            name: instrument.name,
            kind: instrument.kind,
            serialNumber: instrument.serialNumber,
            accuracy: asJson(instrument.accuracy),
            calibratedOn: asDate(instrument.calibratedOn),
            calibrationDueOn: asDate(instrument.calibrationDueOn),
            createdBy: scope.userId,
            updatedBy: scope.userId,
          },
          select: { id: true },
        });
        await appendActivity(tx, scope, {
          action: "instrument added",
          entity: "instrument",
          entityId: row.id,
          after: { name: instrument.name },
        });
        return asId<"instrument">(row.id);
      }),
  };
}

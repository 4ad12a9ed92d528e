import { z } from "zod";
import { accuracySchema, type Instrument } from "@/lib/domain/catalog";
import { asId, type InstrumentId } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import { notFound } from "@/lib/errors";
import { appendActivity } from "./activity";
import { movedOn } from "./catalog-errors";
import type { Instrument as InstrumentRow } from "./generated/client";
import { asDate, asDay, asJson } from "./json";
import { withTenant } from "./with-tenant";

export type KeptInstrument = Instrument & { readonly version: number; readonly retired: boolean };

/** One calibration on the trail; `accuracy` in words. */
export type Calibration = z.output<typeof calibrationSchema> & { readonly byName: string };
const calibrationSchema = z.object({
  calibratedOn: z.string().nullable(),
  calibrationDueOn: z.string().nullable(),
  accuracy: z.array(z.string()),
});

function toInstrument(row: InstrumentRow): Instrument {
  return {
    id: asId<"instrument">(row.id),
    name: row.name,
    kind: row.kind,
    serialNumber: row.serialNumber,
    accuracy: accuracySchema.parse(row.accuracy),
    calibratedOn: asDay(row.calibratedOn),
    calibrationDueOn: asDay(row.calibrationDueOn),
    ...(row.retiredAt === null ? {} : { retired: true }),
  };
}

function forTrail({ accuracy, ...rest }: Omit<Instrument, "id">) {
  const words = accuracy.map(
    (one) => `${one.quantity} ± ${one.plusMinus} ${one.unit} and ${one.percentOfReading} %`,
  );
  return { ...rest, accuracy: words };
}

export function instruments(scope: TenantScope) {
  return {
    /** Retired ones as well when asked: a reading keeps the accuracy it was taken with. */
    list: (which: "in use" | "all" = "in use"): Promise<readonly Instrument[]> =>
      withTenant(scope, async (tx) => {
        const rows = await tx.instrument.findMany({
          where: { tenantId: scope.tenantId, ...(which === "all" ? {} : { retiredAt: null }) },
          orderBy: { name: "asc" },
        });
        return rows.map(toInstrument);
      }),

    /** One instrument, retired or not, with the version a change must start from. */
    find: (id: InstrumentId): Promise<KeptInstrument | null> =>
      withTenant(scope, async (tx) => {
        const row = await tx.instrument.findFirst({ where: { tenantId: scope.tenantId, id } });
        return row ? { ...toInstrument(row), version: row.version, retired: row.retiredAt !== null } : null;
      }),

    /** Its calibrations as they were recorded, the newest first. */
    calibrations: (id: InstrumentId): Promise<readonly Calibration[]> =>
      withTenant(scope, async (tx) => {
        const rows = await tx.activity.findMany({
          where: {
            tenantId: scope.tenantId,
            entity: "instrument",
            entityId: id,
            action: "instrument calibrated",
          },
          orderBy: { seq: "desc" },
          include: { actor: { select: { name: true } } },
        });
        return rows.map((row) => {
          const { calibratedOn, calibrationDueOn, accuracy } = calibrationSchema.parse(row.after);
          return { calibratedOn, calibrationDueOn, accuracy, byName: row.actor?.name ?? "" };
        });
      }),

    /** Changes it, or refuses when someone else has since. A new calibration stands on the trail as such. */
    change: (id: InstrumentId, expectedVersion: number, next: Omit<Instrument, "id">): Promise<void> =>
      withTenant(scope, async (tx) => {
        const row = await tx.instrument.findFirst({ where: { tenantId: scope.tenantId, id } });
        if (!row) throw notFound();
        const changed = await tx.instrument.updateMany({
          where: { tenantId: scope.tenantId, id, version: expectedVersion },
          data: {
            name: next.name,
            kind: next.kind,
            serialNumber: next.serialNumber,
            accuracy: asJson(next.accuracy),
            calibratedOn: asDate(next.calibratedOn),
            calibrationDueOn: asDate(next.calibrationDueOn),
            version: { increment: 1 },
            updatedBy: scope.userId,
          },
        });
        if (changed.count === 0) throw movedOn();
        const before = toInstrument(row);
        await appendActivity(tx, scope, {
          action: next.calibratedOn !== before.calibratedOn ? "instrument calibrated" : "instrument changed",
          entity: "instrument",
          entityId: id,
          before: forTrail(before),
          after: forTrail(next),
        });
      }),

    /** Takes it off the lists, or puts it back. Readings keep naming it. */
    setRetired: (id: InstrumentId, retired: boolean): Promise<void> =>
      withTenant(scope, async (tx) => {
        const changed = await tx.instrument.updateMany({
          where: { tenantId: scope.tenantId, id },
          data: {
            retiredAt: retired ? new Date() : null,
            version: { increment: 1 },
            updatedBy: scope.userId,
          },
        });
        if (changed.count === 0) throw notFound();
        await appendActivity(tx, scope, {
          action: retired ? "instrument retired" : "instrument brought back",
          entity: "instrument",
          entityId: id,
        });
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

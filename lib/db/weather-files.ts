import { z } from "zod";
import type { WeatherDesign } from "@/lib/domain/evaluate";
import type { TenantScope } from "@/lib/domain/scope";
import { notFound } from "@/lib/errors";
import { appendActivity } from "./activity";
import { asJson } from "./json";
import { withTenant } from "./with-tenant";

export type WeatherFile = {
  readonly id: string;
  readonly name: string;
  readonly sourceNote: string;
  readonly latitude: number;
  readonly longitude: number;
  readonly elevationFt: number;
  readonly sha256: string;
  readonly design: WeatherDesign;
};

export type NewWeatherFile = Omit<WeatherFile, "id"> & {
  readonly utcOffsetHours: number;
  readonly hours: number;
  readonly sizeBytes: number;
};

const designSchema = z.object({
  name: z.string(),
  coolingDbF: z.number(),
  coolingWbF: z.number(),
  wetDewPointF: z.number(),
  wetDbF: z.number(),
  heatingDbF: z.number(),
});

export function weatherFiles(scope: TenantScope) {
  return {
    list: (): Promise<readonly WeatherFile[]> =>
      withTenant(scope, async (tx) => {
        const rows = await tx.weatherFile.findMany({
          where: { tenantId: scope.tenantId, archivedAt: null },
          orderBy: { name: "asc" },
        });
        return rows.map(toFile);
      }),

    /** A job may have none yet: no id finds no file, and asks nothing. */
    find: async (id: string | null): Promise<WeatherFile | null> => {
      if (id === null) return null;
      return withTenant(scope, async (tx) => {
        const row = await tx.weatherFile.findFirst({
          where: { tenantId: scope.tenantId, archivedAt: null, id },
        });
        return row && toFile(row);
      });
    },

    /** Name of the very same file on the list; `null` when it is not there. */
    findSame: (sha256: string): Promise<string | null> =>
      withTenant(scope, async (tx) => {
        const row = await tx.weatherFile.findFirst({
          where: { tenantId: scope.tenantId, sha256, archivedAt: null },
          select: { name: true },
        });
        return row?.name ?? null;
      }),

    /** Takes a file off the list. Added again it comes back. */
    retire: (id: string): Promise<void> =>
      withTenant(scope, async (tx) => {
        const row = await tx.weatherFile.findFirst({
          where: { tenantId: scope.tenantId, id, archivedAt: null },
          select: { name: true },
        });
        if (row === null) throw notFound();
        await tx.weatherFile.updateMany({
          where: { tenantId: scope.tenantId, id },
          data: { archivedAt: new Date() },
        });
        await appendActivity(tx, scope, {
          action: "weather file retired",
          entity: "weather file",
          entityId: id,
          before: { name: row.name },
        });
      }),

    /** How many jobs are held against each file. */
    jobCounts: (): Promise<ReadonlyMap<string, number>> =>
      withTenant(scope, async (tx) => {
        const rows = await tx.job.groupBy({
          by: ["weatherFileId"],
          where: { tenantId: scope.tenantId, weatherFileId: { not: null } },
          _count: { _all: true },
        });
        return new Map(
          rows.flatMap((row) => (row.weatherFileId === null ? [] : [[row.weatherFileId, row._count._all]])),
        );
      }),

    add: ({ design, ...file }: NewWeatherFile): Promise<string> =>
      withTenant(scope, async (tx) => {
        const facts = { ...file, storageKey: file.sha256, designValues: asJson(design), archivedAt: null };
        const row = await tx.weatherFile.upsert({
          where: { tenantId_sha256: { tenantId: scope.tenantId, sha256: file.sha256 } },
          create: { tenantId: scope.tenantId, ...facts, createdBy: scope.userId },
          update: facts,
          select: { id: true },
        });
        await appendActivity(tx, scope, {
          action: "weather file added",
          entity: "weather file",
          entityId: row.id,
          after: { name: file.name },
        });
        return row.id;
      }),
  };
}

type Row = Omit<WeatherFile, "design"> & { readonly designValues: unknown };

function toFile({ designValues, ...row }: Row): WeatherFile {
  const { id, name, sourceNote, latitude, longitude, elevationFt, sha256 } = row;
  return {
    sha256,
    id,
    name,
    sourceNote,
    latitude,
    longitude,
    elevationFt,
    design: designSchema.parse(designValues),
  };
}

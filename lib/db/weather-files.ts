import { z } from "zod";
import type { WeatherDesign } from "@/lib/domain/evaluate";
import type { TenantScope } from "@/lib/domain/scope";
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

    find: (id: string): Promise<WeatherFile | null> =>
      withTenant(scope, async (tx) => {
        const row = await tx.weatherFile.findFirst({
          where: { tenantId: scope.tenantId, archivedAt: null, id },
        });
        return row && toFile(row);
      }),

    add: ({ design, ...file }: NewWeatherFile): Promise<string> =>
      withTenant(scope, async (tx) => {
        const row = await tx.weatherFile.create({
          data: {
            tenantId: scope.tenantId,
            ...file,
            storageKey: file.sha256,
            designValues: asJson(design),
            createdBy: scope.userId,
          },
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

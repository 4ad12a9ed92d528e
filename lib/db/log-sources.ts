import type { TenantScope } from "@/lib/domain/scope";
import { asJson } from "./json";
import { withTenant } from "./with-tenant";

/** A logger as it is remembered: how its files are read, recognised by their headings. */
export type LogSource = {
  readonly id: string;
  readonly name: string;
  readonly headerFingerprint: string;
  readonly mapping: unknown;
  readonly timeZone: string;
};

export type NewLogSource = Omit<LogSource, "id">;

const SCHEMA_VERSION = 1;
const FIELDS = { id: true, name: true, headerFingerprint: true, mapping: true, timeZone: true } as const;

export function logSources(scope: TenantScope) {
  const own = { tenantId: scope.tenantId };
  return {
    /** The company's loggers, last used first. */
    list: (): Promise<readonly LogSource[]> =>
      withTenant(scope, (tx) =>
        tx.logSource.findMany({
          where: own,
          orderBy: [{ lastUsedAt: { sort: "desc", nulls: "last" } }, { name: "asc" }],
          select: FIELDS,
          take: 200,
        }),
      ),

    /** Remembers how a logger is read and answers its id. Its row stays locked to the end of the transaction. */
    remember: (source: NewLogSource): Promise<string> =>
      withTenant(scope, async (tx) => {
        const { name, headerFingerprint, timeZone } = source;
        const mapping = asJson(source.mapping);
        const row = await tx.logSource.upsert({
          where: { tenantId_name: { ...own, name } },
          create: {
            ...own,
            name,
            headerFingerprint,
            timeZone,
            mapping,
            schemaVersion: SCHEMA_VERSION,
            lastUsedAt: new Date(),
            createdBy: scope.userId,
            updatedBy: scope.userId,
          },
          update: {
            headerFingerprint,
            timeZone,
            mapping,
            lastUsedAt: new Date(),
            updatedBy: scope.userId,
            version: { increment: 1 },
          },
          select: { id: true },
        });
        return row.id;
      }),
  };
}

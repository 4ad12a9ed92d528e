import type { TenantScope } from "@/lib/domain/scope";

/**
 * Rows that never change, kept in this process under company and id, at most so many; the one not asked for the longest
 * goes first. For versions of the catalog only: of what can be changed a second server would not hear.
 */
export function keptVersions<T>(most: number) {
  const kept = new Map<string, T>();
  const keyOf = ({ tenantId }: TenantScope, id: string) => `${tenantId} ${id}`;
  return {
    get: (scope: TenantScope, id: string): T | undefined => {
      const key = keyOf(scope, id);
      const found = kept.get(key);
      if (found !== undefined) {
        kept.delete(key);
        kept.set(key, found);
      }
      return found;
    },
    keep: (scope: TenantScope, id: string, row: T): T => {
      kept.set(keyOf(scope, id), row);
      const [oldest] = kept.keys();
      if (kept.size > most && oldest !== undefined) kept.delete(oldest);
      return row;
    },
  };
}

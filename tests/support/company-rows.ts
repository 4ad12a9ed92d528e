import { createHash } from "node:crypto";
import type { Client } from "pg";
import type { TenantScope } from "@/lib/domain/scope";
import { tenantTables } from "./catalog";
import { inRole } from "./connect";

/** Every row of a company as one hash a table: two that are equal mean that nothing was changed. */
export async function rowsOfCompany(
  client: Client,
  scope: TenantScope,
): Promise<Readonly<Record<string, string>>> {
  const tables = await tenantTables(client);
  return inRole(client, "app_user", scope, async () => {
    const found: Record<string, string> = {};
    for (const { name } of tables) {
      const { rows } = await client.query<{ row: string }>(
        `SELECT to_jsonb(one)::text AS row FROM "${name}" one ORDER BY 1`,
      );
      const hash = createHash("sha256").update(rows.map(({ row }) => row).join("\n"));
      found[name] = `${rows.length} rows ${hash.digest("hex")}`;
    }
    return found;
  });
}

/** The first entry of the trail that does not follow from the one before; null when all do. */
export function firstBrokenSeq(client: Client, scope: TenantScope): Promise<string | null> {
  return inRole(client, "app_user", scope, async () => {
    const { rows } = await client.query("SELECT activity_first_broken_seq() AS seq");
    return rows[0].seq as string | null;
  });
}

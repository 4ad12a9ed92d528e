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
  const hashes = tables.map(
    ({ name }) =>
      `SELECT '${name}' AS name, count(*) || ' rows ' || coalesce(md5(string_agg(row, chr(10) ORDER BY row)), '') AS hash
       FROM (SELECT to_jsonb(one)::text AS row FROM "${name}" one) rows`,
  );
  return inRole(client, "app_user", scope, async () => {
    const { rows } = await client.query<{ name: string; hash: string }>(hashes.join(" UNION ALL "));
    return Object.fromEntries(rows.map(({ name, hash }) => [name, hash]));
  });
}

/** The first entry of the trail that does not follow from the one before; null when all do. */
export function firstBrokenSeq(client: Client, scope: TenantScope): Promise<string | null> {
  return inRole(client, "app_user", scope, async () => {
    const { rows } = await client.query("SELECT activity_first_broken_seq() AS seq");
    return rows[0].seq as string | null;
  });
}

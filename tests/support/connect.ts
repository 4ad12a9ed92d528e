import { Client } from "pg";
import type { TenantScope } from "@/lib/domain/scope";

/** A connection of the database's ordinary owner, as the application has it. */
export async function connect(url = process.env.DATABASE_URL): Promise<Client> {
  const client = new Client({ connectionString: url });
  client.on("error", () => undefined);
  await client.connect();
  return client;
}

/** Runs SQL as `withTenant` would: in a transaction of the role and company. Null: no company is set. */
export async function inRole<T>(
  client: Client,
  role: "app_user" | "app_unscoped" | "app_eraser" | null,
  scope: TenantScope | null,
  work: () => Promise<T>,
): Promise<T> {
  await client.query("BEGIN");
  try {
    if (role) await client.query("SELECT set_config('role', $1, true)", [role]);
    if (scope) await client.query("SELECT set_config('app.tenant', $1, true)", [scope.tenantId]);
    const result = await work();
    await client.query("COMMIT");
    return result;
  } catch (error) {
    await client.query("ROLLBACK");
    throw error;
  }
}

/** The code with which PostgreSQL refused, or "allowed". */
export async function refusal(attempt: Promise<unknown>): Promise<string> {
  try {
    await attempt;
    return "allowed";
  } catch (error) {
    if (error instanceof Error && "code" in error) return String(error.code);
    throw error;
  }
}

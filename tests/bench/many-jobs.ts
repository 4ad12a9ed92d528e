import type { Client } from "pg";
import type { TenantScope } from "@/lib/domain/scope";

const STAGES =
  "ARRAY['load_summary','equipment_selection','airflow_setup','control_setup','startup_record','humidity_review']";
/** In the proportions of no company in particular: one in 20 falls short, one in 50 needs attention. */
const VERDICT = `CASE WHEN n % 20 = 0 THEN 'falls short' WHEN n % 20 < 4 THEN 'can''t tell' WHEN n % 20 < 8 THEN NULL ELSE 'meets' END`;
const FIRST = "ARRAY['Ann','Bo','Cy','Dee','Eli','Fay','Gus','Hal','Ivy','Jo']";
const LAST =
  "ARRAY['Ember','Reed','Marsh','Dune','Cove','Brook','Vale','Heath','Ridge','Glade','Thorn','Fern']";

/**
 * Fills a company with jobs, one assigned tech each. As the tables' owner, with policies and triggers off for the
 * filling only: what the triggers would write is written here by the same formulas.
 */
export async function fillJobs(
  client: Client,
  scope: TenantScope,
  techIds: readonly string[],
  count: number,
): Promise<void> {
  const tables = ["job", "customer", "home", "job_assignment"];
  const each = async (what: string) => {
    for (const table of tables) await client.query(`ALTER TABLE ${table} ${what}`);
  };
  await each("NO FORCE ROW LEVEL SECURITY");
  await each("DISABLE TRIGGER USER");
  const own = [scope.tenantId, scope.userId];
  // Ids that follow from the company and a number, so that rows can point to each other.
  const id = (kind: string, n: string) => `md5('${kind}' || $1::text || (${n})::text)::uuid`;
  const name = (n: string) =>
    `(${FIRST})[1 + (${n}) % 10] || ' ' || (${LAST})[1 + ((${n}) / 10) % 12] || ' ' || (${n})`;
  const every10 = `generate_series(0, ${Math.floor(count / 10)}) n`;
  await client.query(
    `INSERT INTO customer (tenant_id, id, name, created_by, updated_by)
     SELECT $1::uuid, ${id("customer", "n")}, ${name("n")}, $2::uuid, $2::uuid FROM ${every10}`,
    own,
  );
  await client.query(
    `INSERT INTO home (tenant_id, id, customer_id, address_line, city, region, postal_code, created_by, updated_by)
     SELECT $1::uuid, ${id("home", "n")}, ${id("customer", "n")}, n || ' Elm Way', 'Bay', 'TX', '77000', $2::uuid, $2::uuid
     FROM ${every10}`,
    own,
  );
  await client.query(
    `INSERT INTO job (tenant_id, id, number, customer_id, home_id, current_stage, stage_sort, verdict, verdict_sort,
       needs_attention, startup_due, startup_sort, customer_sort, tech_sort, search_text, created_by, updated_by)
     SELECT $1::uuid, ${id("job", "n")}, n, ${id("customer", "n / 10")}, ${id("home", "n / 10")},
       (${STAGES})[1 + n % 6], 1 + n % 6, ${VERDICT},
       coalesce(array_position(ARRAY['falls short','can''t tell','not measured','meets'], ${VERDICT}), 5),
       n % 50 = 0, date '2026-01-01' + n % 700, date '2026-01-01' + n % 700, lower(${name("n / 10")}),
       'tech ' || n % 20, lower(n || ' ' || ${name("n / 10")} || ' ' || n / 10 || ' Elm Way Bay TX 77000'),
       $2::uuid, $2::uuid
     FROM generate_series(1, ${count}) n`,
    own,
  );
  await client.query(
    `INSERT INTO job_assignment (tenant_id, job_id, job_number, user_id, assigned_by)
     SELECT $1::uuid, ${id("job", "n")}, n, ($3::uuid[])[1 + n % ${techIds.length}], $2::uuid
     FROM generate_series(1, ${count}) n`,
    [...own, techIds],
  );
  await each("ENABLE TRIGGER USER");
  await each("FORCE ROW LEVEL SECURITY");
}

import type { TenantScope } from "@/lib/domain/scope";
import { type FactFilter, whichJobs } from "./across-jobs-columns";
import { Prisma } from "./generated/client";
import { withTenant } from "./with-tenant";

/** What an exported job carries: heading, with its unit, and the column it comes from. */
export const EXPORTED = [
  ["Job", "job.number"],
  ["Customer", "customer.name"],
  ["City", "home.city"],
  ["State", "home.region"],
  ["Builder", "fact.builder"],
  ["Startup signed", "fact.startup_signed_on::text"],
  ["Signed by", "membership.name"],
  ["Equipment maker", "model.maker"],
  ["Equipment", "model.name"],
  ["Nominal tons", "fact.nominal_tons"],
  ["Capacity setting", "fact.capacity_setting"],
  ["First-stage airflow setting", "fact.first_stage_airflow_setting"],
  ["Second-stage airflow setting", "fact.second_stage_airflow_setting"],
  ["First-stage cfm per ton", "fact.first_stage_cfm_per_ton"],
  ["Second-stage cfm per ton", "fact.second_stage_cfm_per_ton"],
  ["External static, in. w.c.", "fact.external_static_in_wc"],
  ["First-stage start offset, °F", "fact.first_stage_start_offset_f"],
  ["Second-stage start offset, °F", "fact.second_stage_start_offset_f"],
  ["Minimum compressor run, min", "fact.minimum_compressor_run_min"],
  ["Step back to first stage", "fact.step_back_to_first_stage"],
  ["Fan run-on, s", "fact.fan_run_on_seconds"],
  ["Fan between calls", "fact.fan_between_calls"],
  ["Load total, Btu/h", "fact.load_total_btuh"],
  ["Load latent, Btu/h", "fact.load_latent_btuh"],
  ["Capacity over load", "fact.size_ratio"],
  ["Total capacity, Btu/h", "fact.total_capacity_btuh"],
  ["Sensible ratio", "fact.sensible_ratio"],
  ["Moisture removal, lb/h", "fact.moisture_removal_lb_per_h"],
  ["Superheat, °F", "fact.superheat_f"],
  ["Subcooling, °F", "fact.subcooling_f"],
  ["Dry-hours in the log, h", "fact.lived_dry_hours"],
  ["Hours in the log, h", "fact.lived_logged_hours"],
  ["Hours between 50 and 60 %, %", "fact.share_between_50_and_60_pct"],
  ["Hours above the limit, %", "fact.share_above_limit_pct"],
  ["Mean indoor dew point, °F", "fact.mean_indoor_dew_point_f"],
  ["Cycles per hour", "fact.cycles_per_hour"],
  ["Second-stage share, %", "fact.second_stage_share_pct"],
  ["Verdict", "fact.verdict"],
  ["Startup verdict", "fact.startup_record_verdict"],
  ["Humidity review verdict", "fact.humidity_review_verdict"],
  ["Callbacks", "fact.callback_count"],
  ["Humidity complaints", "fact.humidity_complaint_count"],
] as const satisfies readonly (readonly [heading: string, column: string])[];

export type ExportedCell = string | number | boolean | null;
const ROWS_A_READ = 2_000;
const COLUMNS = Prisma.raw(EXPORTED.map(([, column], index) => `${column} AS "c${index}"`).join(", "));

/** The facts of the jobs asked about, some thousand at a time in the order of their ids, each time in a transaction of its own. */
export async function* exportedJobs(
  scope: TenantScope,
  filter: FactFilter,
): AsyncGenerator<readonly (readonly ExportedCell[])[]> {
  let after = "00000000-0000-0000-0000-000000000000";
  for (;;) {
    const rows = await withTenant(
      scope,
      (tx) => tx.$queryRaw<(Record<string, ExportedCell> & { jobId: string })[]>`
        SELECT fact.job_id AS "jobId", ${COLUMNS}
        FROM (SELECT * FROM job_fact WHERE ${whichJobs(scope, filter)} AND job_id > ${after}::uuid
              ORDER BY job_id LIMIT ${ROWS_A_READ}::int) fact
        JOIN job ON job.tenant_id = fact.tenant_id AND job.id = fact.job_id
        JOIN customer ON customer.tenant_id = job.tenant_id AND customer.id = job.customer_id
        JOIN home ON home.tenant_id = job.tenant_id AND home.id = job.home_id
        LEFT JOIN membership ON membership.tenant_id = fact.tenant_id AND membership.user_id = fact.tech_id
        LEFT JOIN equipment_model model ON model.tenant_id = fact.tenant_id AND model.id = fact.equipment_model_id
        ORDER BY fact.job_id`,
    );
    if (rows.length > 0) yield rows.map((row) => EXPORTED.map((_, index) => row[`c${index}`] ?? null));
    const last = rows.at(-1);
    if (!last || rows.length < ROWS_A_READ) return;
    after = last.jobId;
  }
}

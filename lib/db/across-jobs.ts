import type { ComparedBy } from "@/lib/domain/across-jobs";
import type { TenantScope } from "@/lib/domain/scope";
import { Prisma } from "./generated/client";
import { withTenant } from "./with-tenant";

/** The column behind each comparison. Only these words ever become part of a statement. */
const COLUMNS: Readonly<Record<ComparedBy, Prisma.Sql>> = {
  equipmentModelId: Prisma.sql`equipment_model_id`,
  capacitySetting: Prisma.sql`capacity_setting`,
  firstStageAirflowSetting: Prisma.sql`first_stage_airflow_setting`,
  secondStageAirflowSetting: Prisma.sql`second_stage_airflow_setting`,
  fanRunOnSeconds: Prisma.sql`fan_run_on_seconds`,
  fanBetweenCalls: Prisma.sql`fan_between_calls`,
  startupMonth: Prisma.sql`startup_month`,
  techId: Prisma.sql`tech_id`,
};

export type CountedGroup = {
  readonly value: string | null;
  readonly jobs: number;
  readonly complaints: number;
};

export type JobOfGroup = {
  readonly jobId: string;
  readonly number: number;
  readonly customerName: string;
  readonly humidityComplaints: number;
};

/** Questions over the facts of all jobs with a signed startup. One statement each. */
export function acrossJobs(scope: TenantScope) {
  return {
    /** Jobs, and jobs with a humidity complaint, by a setting. */
    complaintsBy: (by: ComparedBy): Promise<readonly CountedGroup[]> =>
      withTenant(
        scope,
        (tx) => tx.$queryRaw<CountedGroup[]>`
          SELECT ${COLUMNS[by]}::text AS value, count(*)::int AS jobs,
            (count(*) FILTER (WHERE humidity_complaint_count > 0))::int AS complaints
          FROM job_fact
          WHERE tenant_id = ${scope.tenantId}::uuid AND startup_signed_on IS NOT NULL
          GROUP BY ${COLUMNS[by]}`,
      ),

    /** The jobs of one group, those with humidity complaints first. */
    jobsOf: (by: ComparedBy, value: string | null, take: number): Promise<readonly JobOfGroup[]> =>
      withTenant(
        scope,
        (tx) => tx.$queryRaw<JobOfGroup[]>`
          SELECT fact.job_id AS "jobId", job.number, customer.name AS "customerName",
            fact.humidity_complaint_count AS "humidityComplaints"
          FROM (
            SELECT tenant_id, job_id, humidity_complaint_count FROM job_fact
            WHERE tenant_id = ${scope.tenantId}::uuid AND startup_signed_on IS NOT NULL
              AND ${COLUMNS[by]}::text IS NOT DISTINCT FROM ${value}::text
            ORDER BY humidity_complaint_count DESC, job_id DESC LIMIT ${take}::int
          ) fact
          JOIN job ON job.tenant_id = fact.tenant_id AND job.id = fact.job_id
          JOIN customer ON customer.tenant_id = job.tenant_id AND customer.id = job.customer_id
          ORDER BY fact.humidity_complaint_count DESC, job.number DESC`,
      ),
  };
}

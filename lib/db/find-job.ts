import { asId, type JobId } from "@/lib/domain/ids";
import type { AssignedTech, Customer, Home, Job, JobState } from "@/lib/domain/jobs";
import type { TenantScope } from "@/lib/domain/scope";
import type { StageKey } from "@/lib/domain/stages";
import type { Verdict } from "@/lib/engineering/findings";
import { asDay } from "./json";
import { jobIsVisible } from "./visibility";
import type { TenantTransaction } from "./with-tenant";

type Row = {
  readonly id: string;
  readonly number: number;
  readonly version: number;
  readonly title: string;
  readonly state: string;
  readonly currentStage: string | null;
  readonly verdict: string | null;
  readonly attention: readonly string[];
  readonly startupDue: Date | null;
  readonly reviewDue: Date | null;
  readonly note: string;
  readonly weatherFileId: string | null;
  readonly createdAt: Date;
  readonly customer: Customer;
  readonly home: Home;
  readonly techs: readonly AssignedTech[];
};

/**
 * One job with customer, home and techs, or `null` when this person may not know of it. A statement of its own, because
 * every reading of every phone asks for it: the client would send five.
 */
export async function findJob(tx: TenantTransaction, scope: TenantScope, id: JobId): Promise<Job | null> {
  const rows = await tx.$queryRaw<readonly Row[]>`
    SELECT job.id, job.number, job.version, job.title, job.state, job.current_stage AS "currentStage", job.verdict,
      job.attention, job.startup_due AS "startupDue", job.review_due AS "reviewDue", job.note,
      job.weather_file_id AS "weatherFileId", job.created_at AS "createdAt",
      jsonb_build_object('id', customer.id, 'name', customer.name, 'email', customer.email, 'phone', customer.phone)
        AS customer,
      jsonb_build_object('id', home.id, 'addressLine', home.address_line, 'city', home.city, 'region', home.region,
        'postalCode', home.postal_code, 'elevationFt', home.elevation_ft, 'builder', home.builder,
        'latitude', home.latitude, 'longitude', home.longitude) AS home,
      (SELECT coalesce(jsonb_agg(jsonb_build_object('userId', member.user_id, 'name', member.name)
          ORDER BY member.name, member.user_id), '[]')
        FROM job_assignment assigned
        JOIN membership member ON member.tenant_id = assigned.tenant_id AND member.user_id = assigned.user_id
        WHERE assigned.tenant_id = job.tenant_id AND assigned.job_id = job.id) AS techs
    FROM job
    JOIN customer ON customer.tenant_id = job.tenant_id AND customer.id = job.customer_id
    JOIN home ON home.tenant_id = job.tenant_id AND home.id = job.home_id
    WHERE ${jobIsVisible(scope)} AND job.id = ${id}::uuid`;
  const [row] = rows;
  if (!row) return null;
  return {
    ...row,
    id: asId<"job">(row.id),
    state: row.state as JobState,
    currentStage: row.currentStage as StageKey | null,
    verdict: row.verdict as Verdict | null,
    startupDue: asDay(row.startupDue),
    reviewDue: asDay(row.reviewDue),
    createdAt: row.createdAt.toISOString(),
    customerName: row.customer.name,
    place: `${row.home.city}, ${row.home.region}`,
  };
}

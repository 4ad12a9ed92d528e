import {
  type ComparedBy,
  type JobOfGroup,
  type Measure,
  type OutcomeCounted,
  SETTINGS_LOOKED_AT,
} from "@/lib/domain/across-jobs";
import type { VerdictCount } from "@/lib/domain/group-verdicts";
import type { TenantScope } from "@/lib/domain/scope";
import { COLUMNS, type FactFilter, keyOf, MEASURED, OUTCOME, whichJobs } from "./across-jobs-columns";
import { Prisma } from "./generated/client";
import { type TenantTransaction, withTenant } from "./with-tenant";

export type CountedValue = {
  readonly value: string | null;
  readonly jobs: number;
  readonly complaints: number;
};

export type SpreadOfGroup = {
  readonly value: string | null;
  readonly jobs: number;
  /** 10, 25, 50, 75 and 90 %. */
  readonly quantiles: readonly number[];
  readonly least: number;
  readonly most: number;
  /** Every job's value where there are few. */
  readonly values: readonly number[] | null;
};

/** Up to this many jobs of a group are drawn one by one. */
const FEW_JOBS = 40;

/** Room for one question's groups: with the server's usual 4 MB it would sort all jobs on disk to group them, three times slower. */
const ROOM = Prisma.sql`SELECT set_config('work_mem', '32MB', true)`;

/** Questions over the facts of all jobs with a signed startup. One statement each. */
export function acrossJobs(scope: TenantScope, filter: FactFilter) {
  const asked = <T>(question: (tx: TenantTransaction) => Promise<T>): Promise<T> =>
    withTenant(scope, async (tx) => {
      await tx.$queryRaw(ROOM);
      return question(tx);
    });
  const from = Prisma.sql`FROM job_fact WHERE ${whichJobs(scope, filter)}`;
  return {
    /** Jobs, and jobs with the outcome, by a setting. */
    countedBy: (by: ComparedBy, outcome: OutcomeCounted): Promise<readonly CountedValue[]> =>
      asked(
        (tx) => tx.$queryRaw<CountedValue[]>`
          SELECT (${COLUMNS[by]})::text AS value, count(*)::int AS jobs,
            (count(*) FILTER (WHERE ${OUTCOME[outcome]}))::int AS complaints
          ${from} GROUP BY ${COLUMNS[by]}`,
      ),

    /**
     * The same for every setting at once. Jobs that are alike in all settings are counted first: they are far fewer than the jobs, and
     * only they are grouped by each setting.
     */
    settingsCounted: (
      outcome: OutcomeCounted,
    ): Promise<readonly (CountedValue & { readonly by: ComparedBy })[]> =>
      asked(async (tx) => {
        const columns = SETTINGS_LOOKED_AT.map((_, index) => Prisma.raw(`s${index}`));
        const alike = SETTINGS_LOOKED_AT.map((by, index) => Prisma.sql`${COLUMNS[by]} AS ${columns[index]}`);
        const last = columns.length - 1;
        const rows = await tx.$queryRaw<(CountedValue & { readonly present: number })[]>`
          WITH alike AS MATERIALIZED (
            SELECT ${Prisma.join(alike)}, count(*) AS jobs, count(*) FILTER (WHERE ${OUTCOME[outcome]}) AS complaints
            ${from} GROUP BY ${Prisma.join(columns)})
          SELECT grouping(${Prisma.join(columns)})::int AS present, coalesce(${Prisma.join(
            columns.map((column) => Prisma.sql`(${column})::text`),
          )}) AS value, sum(jobs)::int AS jobs, sum(complaints)::int AS complaints
          FROM alike GROUP BY GROUPING SETS (${Prisma.join(columns.map((column) => Prisma.sql`(${column})`))})`;
        // Each row's bits are all set but that of its own column, the first column's bit being the highest.
        return rows.flatMap(({ present, ...row }) => {
          const by = SETTINGS_LOOKED_AT.find((_, index) => (present & (1 << (last - index))) === 0);
          return by ? [{ ...row, by }] : [];
        });
      }),

    /** How many jobs of each group have which verdict. */
    verdictsBy: (by: ComparedBy): Promise<readonly VerdictCount[]> =>
      asked(
        (tx) => tx.$queryRaw<VerdictCount[]>`
          SELECT ${keyOf(by)} AS value, verdict, count(*)::int AS jobs ${from} GROUP BY 1, 2`,
      ),

    /** How a measure is spread in each group. Groups without any value of it are left out. */
    spreadBy: (by: ComparedBy, measure: Measure): Promise<readonly SpreadOfGroup[]> =>
      asked(async (tx) => {
        const known = Prisma.sql`${from} AND ${MEASURED[measure]} IS NOT NULL`;
        const groups = await tx.$queryRaw<Omit<SpreadOfGroup, "values">[]>`
          SELECT (${COLUMNS[by]})::text AS value, count(*)::int AS jobs,
            percentile_cont(ARRAY[0.1, 0.25, 0.5, 0.75, 0.9]) WITHIN GROUP (ORDER BY ${MEASURED[measure]}) AS quantiles,
            min(${MEASURED[measure]}) AS least, max(${MEASURED[measure]}) AS most
          ${known} GROUP BY ${COLUMNS[by]}`;
        // Asked for apart: in the statement above the values of all jobs would be gathered to be thrown away.
        const few = groups.filter(({ jobs }) => jobs <= FEW_JOBS).map(({ value }) => value);
        if (few.length === 0) return groups.map((group) => ({ ...group, values: null }));
        const drawn = await tx.$queryRaw<{ value: string | null; values: number[] }[]>`
          SELECT ${keyOf(by)} AS value, array_agg(${MEASURED[measure]} ORDER BY ${MEASURED[measure]}) AS values
          ${known} AND (${keyOf(by)} = ANY (${few.filter((value) => value !== null)}::text[])
            OR (${few.includes(null)}::boolean AND ${keyOf(by)} IS NULL))
          GROUP BY 1`;
        const valuesOf = new Map(drawn.map(({ value, values }) => [value, values]));
        return groups.map((group) => ({ ...group, values: valuesOf.get(group.value) ?? null }));
      }),

    /** How many jobs of each group lie in each of `bins` equal steps from `least` to `most`. */
    binned: (
      by: ComparedBy,
      measure: Measure,
      range: { readonly least: number; readonly most: number; readonly bins: number },
    ): Promise<readonly { readonly value: string | null; readonly bin: number; readonly jobs: number }[]> =>
      asked(
        (tx) => tx.$queryRaw<{ value: string | null; bin: number; jobs: number }[]>`
          SELECT (${COLUMNS[by]})::text AS value,
            least(width_bucket(${MEASURED[measure]}, ${range.least}::float8, ${range.most}::float8, ${range.bins}::int), ${range.bins}::int) - 1 AS bin,
            count(*)::int AS jobs
          ${from} AND ${MEASURED[measure]} IS NOT NULL GROUP BY ${COLUMNS[by]}, 2`,
      ),

    /** A page of the jobs of one group, those with the outcome first, then the newest. */
    jobsOf: (
      by: ComparedBy,
      value: string | null,
      shown: {
        readonly outcome: OutcomeCounted;
        readonly measure: Measure | null;
        readonly take: number;
        readonly skip: number;
      },
    ): Promise<readonly JobOfGroup[]> =>
      asked((tx) => {
        const measure = shown.measure === null ? Prisma.sql`NULL::float8` : MEASURED[shown.measure];
        return tx.$queryRaw<JobOfGroup[]>`
          SELECT fact.job_id AS "jobId", job.number, customer.name AS "customerName", fact.verdict, fact.measure,
            fact.humidity_complaint_count AS "humidityComplaints", fact.callback_count AS callbacks
          FROM (
            SELECT tenant_id, job_id, humidity_complaint_count, callback_count, verdict, ${measure} AS measure,
              ${OUTCOME[shown.outcome]} AS hit
            ${from} AND ${keyOf(by)} IS NOT DISTINCT FROM ${value}::text
            ORDER BY hit DESC NULLS LAST, job_id DESC LIMIT ${shown.take}::int OFFSET ${shown.skip}::int
          ) fact
          JOIN job ON job.tenant_id = fact.tenant_id AND job.id = fact.job_id
          JOIN customer ON customer.tenant_id = job.tenant_id AND customer.id = job.customer_id
          ORDER BY fact.hit DESC NULLS LAST, fact.job_id DESC`;
      }),
  };
}

import type { JobFacts } from "@/lib/domain/facts";
import type { JobId } from "@/lib/domain/ids";
import type { LedgerCell, LedgerLine } from "@/lib/domain/ledger";
import type { TenantScope } from "@/lib/domain/scope";
import { STAGES, type StageKey } from "@/lib/domain/stages";
import type { Verdict } from "@/lib/engineering/findings";
import { Prisma } from "./generated/client";
import { countCallbacks } from "./job-fact-counts";
import type { TenantTransaction } from "./with-tenant";

/** Everything that follows from a job's records. It can be rebuilt from them at any time. */
export type JobDerived = {
  readonly currentStage: StageKey | null;
  readonly verdict: Verdict | null;
  readonly attention: readonly string[];
  readonly ledger: readonly LedgerLine[];
  readonly facts: JobFacts;
  readonly engineVersion: string;
};

/** Writes what follows from the records, in the transaction that changes them. */
export async function writeDerived(
  tx: TenantTransaction,
  scope: TenantScope,
  jobId: JobId,
  derived: JobDerived,
): Promise<void> {
  await writeDerivedRows(tx, scope, jobId, derived, { updatedAt: new Date(), updatedBy: scope.userId });
  await countCallbacks(tx, scope, jobId);
}

/** The same after a draft was saved, which changes nothing of what {@link countCallbacks} copies. */
export async function writeDerivedOfDraft(
  tx: TenantTransaction,
  scope: TenantScope,
  jobId: JobId,
  derived: JobDerived,
): Promise<void> {
  const touched = { updatedAt: new Date(), updatedBy: scope.userId };
  const isFirst = await writeDerivedRows(tx, scope, jobId, derived, touched);
  if (isFirst) await countCallbacks(tx, scope, jobId);
}

/** Writes again what follows, with when the job was changed left to the caller. */
export async function rewriteDerived(
  tx: TenantTransaction,
  scope: TenantScope,
  jobId: JobId,
  derived: JobDerived,
  touched: { readonly updatedAt: Date },
): Promise<void> {
  await writeDerivedRows(tx, scope, jobId, derived, touched);
  await countCallbacks(tx, scope, jobId);
}

/**
 * Job, ledger and facts in one statement, because every reading of every phone ends in it. Lines and facts that say what
 * they said stay as they are; lines that fell away are deleted.
 *
 * @returns True when the job had no facts before.
 */
async function writeDerivedRows(
  tx: TenantTransaction,
  scope: TenantScope,
  jobId: JobId,
  derived: JobDerived,
  touched: { readonly updatedAt: Date; readonly updatedBy?: string },
): Promise<boolean> {
  const lines = JSON.stringify(derived.ledger.map((line, position) => lineRow(line, position, derived)));
  const facts = factRow(derived);
  const columns = Object.keys(facts);
  const from = (row: string) => Prisma.raw(columns.map((column) => `${row}.${column}`).join(", "));
  const by = touched.updatedBy ?? null;
  const [written] = await tx.$queryRaw<readonly { readonly isFirst: boolean }[]>`
    WITH changed AS (
      UPDATE job SET current_stage = ${derived.currentStage}, verdict = ${derived.verdict},
        attention = ${[...derived.attention]}::text[], needs_attention = ${derived.attention.length > 0},
        updated_at = ${touched.updatedAt}, updated_by = coalesce(${by}::uuid, updated_by)
      WHERE tenant_id = ${scope.tenantId}::uuid AND id = ${jobId}::uuid
    ), line AS (
      SELECT * FROM jsonb_to_recordset(${lines}::jsonb) AS line (
        "lineKey" text, position int, title text, unit text, designed float8, set float8, measured float8, lived float8,
        "measuredUncertainty" float8, "livedUncertainty" float8, verdict text, evidence jsonb, "engineVersion" text)
    ), gone AS (
      DELETE FROM ledger_line WHERE tenant_id = ${scope.tenantId}::uuid AND job_id = ${jobId}::uuid
        AND line_key NOT IN (SELECT "lineKey" FROM line)
    ), lines AS (
      INSERT INTO ledger_line AS kept (tenant_id, id, job_id, line_key, position, title, unit, designed, set, measured, lived,
        measured_uncertainty, lived_uncertainty, verdict, evidence, engine_version)
      SELECT ${scope.tenantId}::uuid, gen_random_uuid(), ${jobId}::uuid, line.* FROM line
      ON CONFLICT (tenant_id, job_id, line_key) DO UPDATE SET (position, title, unit, designed, set, measured, lived,
          measured_uncertainty, lived_uncertainty, verdict, evidence, engine_version, rebuilt_at)
        = (excluded.position, excluded.title, excluded.unit, excluded.designed, excluded.set, excluded.measured,
          excluded.lived, excluded.measured_uncertainty, excluded.lived_uncertainty, excluded.verdict, excluded.evidence,
          excluded.engine_version, now())
        WHERE (kept.position, kept.title, kept.unit, kept.verdict, kept.evidence, kept.engine_version,
            kept.measured_uncertainty, kept.lived_uncertainty)
          IS DISTINCT FROM (excluded.position, excluded.title, excluded.unit, excluded.verdict, excluded.evidence,
            excluded.engine_version, excluded.measured_uncertainty, excluded.lived_uncertainty)
    )
    INSERT INTO job_fact AS kept (tenant_id, job_id, ${Prisma.raw(columns.join(", "))})
    SELECT ${scope.tenantId}::uuid, ${jobId}::uuid, ${from("fact")}
      FROM jsonb_populate_record(NULL::job_fact, ${JSON.stringify(facts)}::jsonb) AS fact
    ON CONFLICT (tenant_id, job_id) DO UPDATE SET (${Prisma.raw(columns.join(", "))}, rebuilt_at) = (${from("excluded")}, now())
      WHERE (${from("kept")}) IS DISTINCT FROM (${from("excluded")})
    RETURNING xmax = 0 AS "isFirst"`;
  return written?.isFirst ?? false;
}

/** The facts by column. */
function factRow({ facts, engineVersion, verdict }: JobDerived): Readonly<Record<string, unknown>> {
  const { verdicts, ...own } = facts;
  const row: Readonly<Record<string, unknown>> = {
    ...own,
    engineVersion,
    verdict,
    ...Object.fromEntries(STAGES.map((stage) => [`${stage}_verdict`, verdicts[stage]])),
  };
  return Object.fromEntries(Object.entries(row).map(([key, value]) => [columnOf(key), value]));
}

/** `floorAreaFt2` is `floor_area_ft2`, `shareBetween50And60Pct` is `share_between_50_and_60_pct`; a wrong name is an error in the statement. */
function columnOf(key: string): string {
  return key.replaceAll(/[A-Z]|(?<=[a-z])(?<!Ft)\d+/g, (part) => `_${part.toLowerCase()}`);
}

function lineRow(line: LedgerLine, position: number, derived: JobDerived) {
  const number = (cell: LedgerCell) => (typeof cell.value === "number" ? cell.value : null);
  return {
    lineKey: line.key,
    position,
    title: line.label,
    unit: line.unit,
    designed: number(line.cells.designed),
    set: number(line.cells.set),
    measured: number(line.cells.measured),
    lived: number(line.cells.lived),
    measuredUncertainty: line.cells.measured.uncertainty,
    livedUncertainty: line.cells.lived.uncertainty,
    verdict: line.verdict,
    evidence: line.cells,
    engineVersion: derived.engineVersion,
  };
}

import type { JobFacts } from "@/lib/domain/facts";
import type { JobId } from "@/lib/domain/ids";
import type { LedgerCell, LedgerLine } from "@/lib/domain/ledger";
import type { TenantScope } from "@/lib/domain/scope";
import type { StageKey } from "@/lib/domain/stages";
import type { Verdict } from "@/lib/engineering/findings";
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

/** @returns True when the job had no facts before. */
async function writeDerivedRows(
  tx: TenantTransaction,
  scope: TenantScope,
  jobId: JobId,
  derived: JobDerived,
  touched: { readonly updatedAt: Date; readonly updatedBy?: string },
): Promise<boolean> {
  const own = { tenantId: scope.tenantId, jobId };
  await tx.job.updateMany({
    where: { tenantId: scope.tenantId, id: jobId },
    data: {
      currentStage: derived.currentStage,
      verdict: derived.verdict,
      attention: [...derived.attention],
      needsAttention: derived.attention.length > 0,
      ...touched,
    },
  });
  await writeLedger(tx, own, derived);
  const { verdicts, ...facts } = derived.facts;
  const row = {
    ...facts,
    engineVersion: derived.engineVersion,
    verdict: derived.verdict,
    loadSummaryVerdict: verdicts.load_summary,
    equipmentSelectionVerdict: verdicts.equipment_selection,
    airflowSetupVerdict: verdicts.airflow_setup,
    controlSetupVerdict: verdicts.control_setup,
    startupRecordVerdict: verdicts.startup_record,
    humidityReviewVerdict: verdicts.humidity_review,
  };
  const known = await tx.jobFact.updateMany({ where: own, data: { ...row, rebuiltAt: new Date() } });
  if (known.count > 0) return false;
  await tx.jobFact.create({ data: { ...own, ...row }, select: { jobId: true } });
  return true;
}

/** Lines that say what they said stay as they are; the others are written, and those that fell away deleted, at once. */
async function writeLedger(
  tx: TenantTransaction,
  own: { readonly tenantId: string; readonly jobId: string },
  derived: JobDerived,
): Promise<void> {
  const lines = JSON.stringify(derived.ledger.map((line, position) => lineRow(line, position, derived)));
  await tx.$executeRaw`
    WITH line AS (
      SELECT * FROM jsonb_to_recordset(${lines}::jsonb) AS line (
        "lineKey" text, position int, title text, unit text, designed float8, set float8, measured float8, lived float8,
        "measuredUncertainty" float8, "livedUncertainty" float8, verdict text, evidence jsonb, "engineVersion" text)
    ), gone AS (
      DELETE FROM ledger_line WHERE tenant_id = ${own.tenantId}::uuid AND job_id = ${own.jobId}::uuid
        AND line_key NOT IN (SELECT "lineKey" FROM line)
    )
    INSERT INTO ledger_line AS kept (tenant_id, id, job_id, line_key, position, title, unit, designed, set, measured, lived,
      measured_uncertainty, lived_uncertainty, verdict, evidence, engine_version)
    SELECT ${own.tenantId}::uuid, gen_random_uuid(), ${own.jobId}::uuid, line.* FROM line
    ON CONFLICT (tenant_id, job_id, line_key) DO UPDATE SET (position, title, unit, designed, set, measured, lived,
        measured_uncertainty, lived_uncertainty, verdict, evidence, engine_version, rebuilt_at)
      = (excluded.position, excluded.title, excluded.unit, excluded.designed, excluded.set, excluded.measured,
        excluded.lived, excluded.measured_uncertainty, excluded.lived_uncertainty, excluded.verdict, excluded.evidence,
        excluded.engine_version, now())
      WHERE (kept.position, kept.title, kept.unit, kept.verdict, kept.evidence, kept.engine_version,
          kept.measured_uncertainty, kept.lived_uncertainty)
        IS DISTINCT FROM (excluded.position, excluded.title, excluded.unit, excluded.verdict, excluded.evidence,
          excluded.engine_version, excluded.measured_uncertainty, excluded.lived_uncertainty)`;
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

import type { JobFacts } from "@/lib/domain/facts";
import type { JobId } from "@/lib/domain/ids";
import type { LedgerCell, LedgerLine } from "@/lib/domain/ledger";
import type { TenantScope } from "@/lib/domain/scope";
import type { StageKey } from "@/lib/domain/stages";
import type { Verdict } from "@/lib/engineering/findings";
import { countCallbacks } from "./job-fact-counts";
import { asJson } from "./json";
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
}

/** The same, with when and by whom the job was changed left to the caller. */
export async function writeDerivedRows(
  tx: TenantTransaction,
  scope: TenantScope,
  jobId: JobId,
  derived: JobDerived,
  touched: { readonly updatedAt?: Date; readonly updatedBy?: string },
): Promise<void> {
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
  await tx.ledgerLine.deleteMany({ where: own });
  await tx.ledgerLine.createMany({
    data: derived.ledger.map((line, position) => ({ ...own, ...lineRow(line, position, derived) })),
  });
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
  await tx.jobFact.upsert({
    where: { tenantId_jobId: own },
    create: { ...own, ...row },
    update: { ...row, rebuiltAt: new Date() },
  });
  await countCallbacks(tx, scope, jobId);
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
    evidence: asJson(line.cells),
    engineVersion: derived.engineVersion,
  };
}

import type { JobId } from "@/lib/domain/ids";
import type { JobRecords, StageRecord } from "@/lib/domain/jobs";
import type { TenantScope } from "@/lib/domain/scope";
import { STAGE_NAMES, STAGE_VERSIONS, STAGES, type StageInputs, type StageKey } from "@/lib/domain/stages";
import type { Finding, Verdict } from "@/lib/engineering/findings";
import { AppError } from "@/lib/errors";
import { appendActivity } from "./activity";
import { type JobDerived, writeDerived, writeDerivedOfDraft } from "./job-derived";
import { asJson } from "./json";
import { latestRows } from "./latest-records";
import { isSavedAlready, latestRecord, latestRow, lockJob, refuseIfMoved } from "./stage-record-guards";
import { changedValues, FIELDS, toRecord } from "./stage-record-row";
import { visibleJobs } from "./visibility";
import { withTenant } from "./with-tenant";

export type Computed = {
  readonly findings: readonly Finding[];
  readonly verdict: Verdict | null;
  readonly engineVersion: string;
};

export type StageWrite<S extends StageKey> = {
  readonly jobId: JobId;
  readonly stage: S;
  /** The version the person started from; `null` when the stage had no draft yet. */
  readonly expectedVersion: number | null;
  readonly inputs: StageInputs[S];
  /** The newest revision when it was read under the job's lock; without it, it is read. */
  readonly current?: StageRecord | null;
  readonly computed: Computed;
  readonly derived: JobDerived;
};

export function stageRecords(scope: TenantScope) {
  return {
    /** The latest revision of each stage. */
    latest: (jobId: JobId): Promise<JobRecords> =>
      withTenant(scope, async (tx) => {
        const byStage = new Map(
          (await latestRows(tx, scope, jobId)).map((row) => [row.stage, toRecord(row)]),
        );
        return Object.fromEntries(STAGES.map((stage) => [stage, byStage.get(stage) ?? null])) as JobRecords;
      }),

    /** Every revision of one stage, newest first. */
    revisions: (jobId: JobId, stage: StageKey): Promise<readonly StageRecord[]> =>
      withTenant(scope, async (tx) => {
        const rows = await tx.stageRecord.findMany({
          where: { tenantId: scope.tenantId, jobId, stage, job: visibleJobs(scope) },
          orderBy: { revision: "desc" },
          select: FIELDS,
        });
        return rows.map(toRecord);
      }),

    /** Holds other writes to the job's records until the transaction ends. Refuses a job that is not this person's. */
    lock: (jobId: JobId): Promise<void> =>
      withTenant(scope, async (tx) => {
        await lockJob(tx, scope, jobId);
      }),

    /**
     * Saves a draft and answers its new version. Refuses when another save came first; saving what is there
     * already changes nothing and answers the version that holds it.
     */
    saveDraft: <S extends StageKey>(write: StageWrite<S>): Promise<number> =>
      withTenant(scope, async (tx) => {
        const isNewLock = await lockJob(tx, scope, write.jobId);
        const current =
          isNewLock || write.current === undefined
            ? await latestRecord(tx, scope, write.jobId, write.stage)
            : write.current;
        if (current && isSavedAlready(current, write.inputs)) return current.version;
        refuseIfMoved(current, write);
        const data = {
          inputs: asJson(write.inputs),
          schemaVersion: STAGE_VERSIONS[write.stage],
          findings: asJson(write.computed.findings),
          verdict: write.computed.verdict,
          engineVersion: write.computed.engineVersion,
          updatedAt: new Date(),
          updatedBy: scope.userId,
        };
        const own = { tenantId: scope.tenantId, jobId: write.jobId, stage: write.stage };
        if (current) {
          // Written, because every reading of every phone does it.
          await tx.$executeRaw`
            UPDATE stage_record SET inputs = ${JSON.stringify(write.inputs)}::jsonb, schema_version = ${data.schemaVersion},
              findings = ${JSON.stringify(write.computed.findings)}::jsonb, verdict = ${data.verdict},
              engine_version = ${data.engineVersion}, updated_at = ${data.updatedAt},
              updated_by = ${data.updatedBy}::uuid, version = version + 1
            WHERE tenant_id = ${scope.tenantId}::uuid AND job_id = ${write.jobId}::uuid AND stage = ${write.stage}
              AND id = ${current.id}::uuid AND state = 'draft' AND version = ${current.version}`;
        } else {
          await tx.stageRecord.createMany({
            data: { ...own, ...data, revision: 1, createdBy: scope.userId },
          });
        }
        const version = (current?.version ?? 0) + 1;
        const { before, after } = changedValues(current?.inputs, write.inputs);
        await writeDerivedOfDraft(tx, scope, write.jobId, write.derived);
        // Last, because a company's writers wait for each other from here until the transaction ends.
        await appendActivity(tx, scope, {
          action: `${STAGE_NAMES[write.stage]} saved`,
          entity: "stage record",
          entityId: current?.id ?? null,
          jobId: write.jobId,
          before,
          after,
        });
        return version;
      }),

    /** Signs the draft, freezing its revision. */
    sign: <S extends StageKey>(write: StageWrite<S> & { readonly signatureName: string }): Promise<void> =>
      withTenant(scope, async (tx) => {
        await lockJob(tx, scope, write.jobId);
        const current = await latestRecord(tx, scope, write.jobId, write.stage);
        refuseIfMoved(current, write);
        if (!current) throw new AppError("CONFLICT", "Save the record before signing it.");
        const own = { tenantId: scope.tenantId, jobId: write.jobId, stage: write.stage };
        await tx.stageRecord.updateMany({
          where: { ...own, state: "signed" },
          data: { state: "superseded" },
        });
        await tx.stageRecord.updateMany({
          where: { ...own, id: current.id, state: "draft", version: current.version },
          data: {
            state: "signed",
            findings: asJson(write.computed.findings),
            verdict: write.computed.verdict,
            engineVersion: write.computed.engineVersion,
            signedAt: new Date(),
            signedBy: scope.userId,
            signatureName: write.signatureName,
            version: { increment: 1 },
            updatedAt: new Date(),
            updatedBy: scope.userId,
          },
        });
        await appendActivity(tx, scope, {
          action: `${STAGE_NAMES[write.stage]} signed`,
          entity: "stage record",
          entityId: current.id,
          jobId: write.jobId,
          after: { revision: current.revision, verdict: write.computed.verdict },
        });
        await writeDerived(tx, scope, write.jobId, write.derived);
      }),

    /** Opens a new draft revision with the signed one's inputs, and answers its version. */
    reopen: (jobId: JobId, stage: StageKey, reason: string, derived: JobDerived): Promise<number> =>
      withTenant(scope, async (tx) => {
        await lockJob(tx, scope, jobId);
        const current = await latestRow(tx, scope, jobId, stage);
        if (current?.state !== "signed")
          throw new AppError("CONFLICT", "Only a signed record can be reopened.");
        const made = await tx.stageRecord.create({
          data: {
            tenantId: scope.tenantId,
            jobId,
            stage,
            revision: current.revision + 1,
            // Counted on: a form left open since the revision before must not fit the new one.
            version: current.version + 1,
            schemaVersion: current.schemaVersion,
            inputs: asJson(current.inputs),
            findings: asJson(current.findings),
            verdict: current.verdict,
            engineVersion: current.engineVersion,
            reopenReason: reason,
            createdBy: scope.userId,
            updatedBy: scope.userId,
          },
          select: { id: true },
        });
        await appendActivity(tx, scope, {
          action: `${STAGE_NAMES[stage]} reopened`,
          entity: "stage record",
          entityId: made.id,
          jobId,
          reason,
        });
        await writeDerived(tx, scope, jobId, derived);
        return current.version + 1;
      }),
  };
}

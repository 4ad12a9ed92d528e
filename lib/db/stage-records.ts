import { asId, type JobId } from "@/lib/domain/ids";
import type { JobRecords, RecordState, StageRecord } from "@/lib/domain/jobs";
import type { TenantScope } from "@/lib/domain/scope";
import {
  readStoredInputs,
  STAGE_NAMES,
  STAGE_VERSIONS,
  STAGES,
  type StageInputs,
  type StageKey,
} from "@/lib/domain/stages";
import type { Finding, Verdict } from "@/lib/engineering/findings";
import { AppError, notFound } from "@/lib/errors";
import { appendActivity } from "./activity";
import type { Prisma } from "./generated/client";
import { type JobDerived, writeDerived } from "./job-derived";
import { asJson } from "./json";
import { visibleJobs } from "./visibility";
import { type TenantTransaction, withTenant } from "./with-tenant";

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
  readonly computed: Computed;
  readonly derived: JobDerived;
};

const FIELDS = {
  id: true,
  jobId: true,
  stage: true,
  revision: true,
  schemaVersion: true,
  state: true,
  version: true,
  inputs: true,
  findings: true,
  verdict: true,
  engineVersion: true,
  signedAt: true,
  signatureName: true,
  reopenReason: true,
  updatedAt: true,
  updatedByMember: { select: { name: true } },
} as const satisfies Prisma.StageRecordSelect;

type Row = Prisma.StageRecordGetPayload<{ select: typeof FIELDS }>;

export function stageRecords(scope: TenantScope) {
  return {
    /** The latest revision of each stage. */
    latest: (jobId: JobId): Promise<JobRecords> =>
      withTenant(scope, async (tx) => {
        const rows = await tx.stageRecord.findMany({
          where: { tenantId: scope.tenantId, jobId, job: visibleJobs(scope) },
          orderBy: { revision: "desc" },
          distinct: ["stage"],
          select: FIELDS,
        });
        const byStage = new Map(rows.map((row) => [row.stage, toRecord(row)]));
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

    /** Saves a draft and answers its new version. Refuses when another save came first. */
    saveDraft: <S extends StageKey>(write: StageWrite<S>): Promise<number> =>
      withTenant(scope, async (tx) => {
        await lockJob(tx, scope, write.jobId);
        const current = await latestRow(tx, scope, write.jobId, write.stage);
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
          await tx.stageRecord.updateMany({
            where: { ...own, id: current.id, state: "draft", version: current.version },
            data: { ...data, version: { increment: 1 } },
          });
        } else {
          await tx.stageRecord.create({ data: { ...own, ...data, revision: 1, createdBy: scope.userId } });
        }
        const version = (current?.version ?? 0) + 1;
        const { before, after } = changedValues(current?.inputs, write.inputs);
        await appendActivity(tx, scope, {
          action: `${STAGE_NAMES[write.stage]} saved`,
          entity: "stage record",
          entityId: current?.id ?? null,
          jobId: write.jobId,
          before,
          after,
        });
        await writeDerived(tx, scope, write.jobId, write.derived);
        return version;
      }),

    /** Signs the draft, freezing its revision. */
    sign: <S extends StageKey>(write: StageWrite<S> & { readonly signatureName: string }): Promise<void> =>
      withTenant(scope, async (tx) => {
        await lockJob(tx, scope, write.jobId);
        const current = await latestRow(tx, scope, write.jobId, write.stage);
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

    /** Opens a new draft revision with the signed one's inputs. */
    reopen: (jobId: JobId, stage: StageKey, reason: string, derived: JobDerived): Promise<void> =>
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
      }),
  };
}

/** Saves of one job wait for each other, so that a check and its write cannot be parted. */
async function lockJob(tx: TenantTransaction, scope: TenantScope, jobId: JobId): Promise<void> {
  const visible = await tx.job.findFirst({
    where: { AND: [visibleJobs(scope), { id: jobId }] },
    select: { id: true },
  });
  if (!visible) throw notFound();
  await tx.$queryRaw`SELECT 1 FROM job WHERE tenant_id = ${scope.tenantId}::uuid AND id = ${jobId}::uuid FOR UPDATE`;
}

async function latestRow(
  tx: TenantTransaction,
  scope: TenantScope,
  jobId: JobId,
  stage: StageKey,
): Promise<Row | null> {
  return tx.stageRecord.findFirst({
    where: { tenantId: scope.tenantId, jobId, stage },
    orderBy: { revision: "desc" },
    select: FIELDS,
  });
}

function refuseIfMoved(
  current: Row | null,
  write: { readonly stage: StageKey; readonly expectedVersion: number | null },
): void {
  if (current && current.state !== "draft") {
    throw new AppError(
      "SIGNED_RECORD",
      `${STAGE_NAMES[write.stage]} is signed. Reopen it with a reason to change it.`,
    );
  }
  if ((current?.version ?? null) === write.expectedVersion) return;
  throw new AppError(
    "CONFLICT",
    `${current?.updatedByMember.name ?? "Someone"} saved this record while you were typing. Your values are still here; theirs are shown beside them.`,
    { details: { theirs: current ? toRecord(current).inputs : null, version: current?.version ?? null } },
  );
}

/** Only what differs, for the trail. */
function changedValues(before: unknown, after: Readonly<Record<string, unknown>>) {
  const old = (before ?? {}) as Readonly<Record<string, unknown>>;
  const keys = Object.keys(after).filter((key) => (old[key] ?? null) !== (after[key] ?? null));
  const pick = (from: Readonly<Record<string, unknown>>) =>
    Object.fromEntries(keys.map((key) => [key, from[key] ?? null]));
  return { before: pick(old), after: pick(after) };
}

function toRecord(row: Row): StageRecord {
  const stage = row.stage as StageKey;
  return {
    id: asId<"stage record">(row.id),
    jobId: asId<"job">(row.jobId),
    stage,
    revision: row.revision,
    state: row.state as RecordState,
    version: row.version,
    inputs: readStoredInputs(stage, row.schemaVersion, row.inputs),
    findings: row.findings as unknown as readonly Finding[],
    verdict: row.verdict as Verdict | null,
    engineVersion: row.engineVersion,
    signedAt: row.signedAt?.toISOString() ?? null,
    signatureName: row.signatureName,
    reopenReason: row.reopenReason,
    updatedAt: row.updatedAt.toISOString(),
    updatedByName: row.updatedByMember.name,
  };
}

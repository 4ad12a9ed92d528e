import { stageRecords } from "@/lib/db/stage-records";
import { withTenant } from "@/lib/db/with-tenant";
import { missingToSign } from "@/lib/domain/fields";
import { asId, isUuid } from "@/lib/domain/ids";
import type { Job, JobRecords, StageRecord } from "@/lib/domain/jobs";
import type { TenantScope } from "@/lib/domain/scope";
import { STAGE_FIELDS, STAGE_NAMES, type StageInputs, type StageKey } from "@/lib/domain/stages";
import { stageSchema } from "@/lib/domain/stages/schema";
import type { Verdict } from "@/lib/engineering/findings";
import { AppError, invalidInput, notFound } from "@/lib/errors";
import type { ReopenStageInput, SaveStageInput, SignStageInput } from "@/lib/schemas/job";
import { deriveJob, evaluateRecords } from "./evaluate";
import { getJob } from "./jobs";
import { tellWebhooks } from "./tell-webhooks";

/** The stages a permission covers; a record outside them does not exist for it. */
type Allowed = readonly StageKey[];

/** Saves what has been entered so far and answers the record's new version. */
export async function saveStage(
  scope: TenantScope,
  allowed: Allowed,
  input: SaveStageInput,
): Promise<{ readonly version: number }> {
  if (!allowed.includes(input.stage)) throw notFound();
  return lockedJob(scope, input.jobId, async (job, records) => {
    const { version } = await saveLocked(scope, job, records, input);
    return { version };
  });
}

/** Saves a stage of a job whose lock is held, beside the records as they were read under it. */
export async function saveLocked(
  scope: TenantScope,
  job: Job,
  records: JobRecords,
  input: Omit<SaveStageInput, "jobId">,
): Promise<{ readonly version: number; readonly inputs: StageInputs[StageKey] }> {
  const inputs = readInputs(input.stage, input.inputs);
  const after = replaced(records, input.stage, inputs);
  const { computed, derived } = await results(scope, job, after, input.stage);
  const version = await stageRecords(scope).saveDraft({
    jobId: job.id,
    stage: input.stage,
    expectedVersion: input.expectedVersion,
    inputs,
    current: records[input.stage],
    computed,
    derived,
  });
  return { version, inputs };
}

/** Freezes the draft. What is still missing is named field by field. */
export async function signStage(scope: TenantScope, allowed: Allowed, input: SignStageInput): Promise<void> {
  const { stage, expectedVersion, signatureName } = input;
  if (!allowed.includes(stage)) throw notFound();
  await lockedJob(scope, input.jobId, async (job, records) => {
    const record = records[stage];
    if (!record)
      throw new AppError(
        "CONFLICT",
        `${STAGE_NAMES[stage]} has nothing in it yet. Fill it in and save it first.`,
      );
    refuseMissing(stage, record.inputs);
    const signed: JobRecords = { ...records, [stage]: { ...record, state: "signed" } };
    const { computed, derived } = await results(scope, job, signed, stage);
    await stageRecords(scope).sign({
      jobId: job.id,
      stage,
      expectedVersion,
      inputs: record.inputs,
      computed,
      derived,
      signatureName,
    });
    await tellSigned(scope, job, record, computed.verdict);
  });
}

/** What the company's own programs are told of a signature. */
async function tellSigned(
  scope: TenantScope,
  { id, number }: Job,
  { stage, revision }: StageRecord,
  verdict: Verdict | null,
): Promise<void> {
  const of = { jobId: id, jobNumber: number };
  const occasion = `${id} ${revision}`;
  if (stage === "startup_record") await tellWebhooks(scope, "startup.signed", occasion, { ...of, verdict });
  if (stage === "humidity_review" && verdict === "falls short")
    await tellWebhooks(scope, "review.fell_short", occasion, { ...of, verdict });
}

/** Opens the next revision of a signed record, with the reason on the trail, and answers its version. */
export async function reopenStage(
  scope: TenantScope,
  { jobId, stage, reason }: ReopenStageInput,
): Promise<{ readonly version: number }> {
  return lockedJob(scope, jobId, async (job, records) => {
    const record = records[stage];
    if (record?.state !== "signed") throw new AppError("CONFLICT", "Only a signed record can be reopened.");
    const reopened: JobRecords = { ...records, [stage]: { ...record, state: "draft" } };
    const { derived } = await results(scope, job, reopened, stage);
    return { version: await stageRecords(scope).reopen(job.id, stage, reason, derived) };
  });
}

/**
 * Reads and writes under the job's lock. A record's findings and the job's lines follow from all its records:
 * two people saving two stages at once must not each count the other's as it was before.
 */
function lockedJob<T>(
  scope: TenantScope,
  jobId: string,
  work: (job: Job, records: JobRecords) => Promise<T>,
): Promise<T> {
  if (!isUuid(jobId)) throw notFound();
  return withTenant(scope, async () => {
    await stageRecords(scope).lock(asId<"job">(jobId));
    const job = await getJob(scope, jobId);
    return work(job, await stageRecords(scope).latest(job.id));
  });
}

function refuseMissing<S extends StageKey>(stage: S, inputs: StageInputs[S]): void {
  const fields = STAGE_FIELDS[stage];
  const missing = missingToSign(fields, inputs);
  if (missing.length === 0) return;
  throw invalidInput(
    missing.map((field) => ({
      field,
      message: `${fields[field]?.label ?? field} is needed before this can be signed.`,
    })),
  );
}

async function results(scope: TenantScope, job: Job, records: JobRecords, stage: StageKey) {
  const evaluation = await evaluateRecords(scope, job, records);
  const { engineVersion, findings, verdicts } = evaluation;
  return {
    computed: { findings: findings[stage], verdict: verdicts[stage], engineVersion },
    derived: deriveJob(job, records, evaluation),
  };
}

function readInputs<S extends StageKey>(stage: S, given: Readonly<Record<string, unknown>>): StageInputs[S] {
  const parsed = stageSchema(stage).safeParse(given);
  if (parsed.success) return parsed.data;
  throw invalidInput(
    parsed.error.issues.map((issue) => {
      const unknown = issue.code === "unrecognized_keys" ? issue.keys.join(", ") : null;
      return unknown
        ? { field: unknown, message: `${STAGE_NAMES[stage]} has no field “${unknown}”.` }
        : { field: issue.path.join("."), message: issue.message };
    }),
  );
}

/** The records as they will be once this draft is saved. */
function replaced(records: JobRecords, stage: StageKey, inputs: StageInputs[StageKey]): JobRecords {
  const old = records[stage];
  const draft = {
    ...(old ?? { stage, version: 0 }),
    inputs,
    state: "draft",
    updatedAt: new Date().toISOString(),
  };
  return { ...records, [stage]: draft } as JobRecords;
}

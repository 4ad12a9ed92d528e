import { catalog } from "@/lib/db/catalog";
import { company } from "@/lib/db/company";
import { instruments } from "@/lib/db/instruments";
import { logs } from "@/lib/db/logs";
import { members } from "@/lib/db/members";
import { stageRecords } from "@/lib/db/stage-records";
import { withTenant } from "@/lib/db/with-tenant";
import type { ControlModel, EquipmentModel } from "@/lib/domain/catalog";
import { type Evaluation, evaluateJob, type JobContext } from "@/lib/domain/evaluate";
import type { FieldDefs, ReferenceFieldDef } from "@/lib/domain/fields";
import { asId } from "@/lib/domain/ids";
import type { Job, JobRecords, StageRecord } from "@/lib/domain/jobs";
import { may } from "@/lib/domain/roles";
import type { TenantScope } from "@/lib/domain/scope";
import { EDIT_PERMISSION, SIGN_PERMISSION } from "@/lib/domain/stage-permissions";
import { emptyStage, STAGE_FIELDS, STAGES, type StageInputs, type StageKey } from "@/lib/domain/stages";
import type { Verdict } from "@/lib/engineering/findings";
import { notFound } from "@/lib/errors";
import { jobContext } from "./evaluate";
import { getJob } from "./jobs";

export type JobView = {
  readonly job: Job;
  readonly records: JobRecords;
  readonly context: JobContext;
  readonly evaluation: Evaluation;
};

/** A job with everything that follows from its records as they stand now. */
export function jobView(scope: TenantScope, jobId: string): Promise<JobView> {
  return withTenant(scope, async () => {
    const job = await getJob(scope, jobId);
    const records = await stageRecords(scope).latest(job.id);
    const context = await jobContext(scope, job, records);
    return { job, records, context, evaluation: evaluateJob(context) };
  });
}

export type ReferenceChoice = { readonly value: string; readonly label: string };
/** What can be chosen from the catalog and the job. Settings of the equipment follow from the chosen model. */
export type ReferenceChoices = Readonly<
  Record<Exclude<ReferenceFieldDef["to"], "capacity setting" | "airflow setting">, readonly ReferenceChoice[]>
>;

export type StageView = {
  readonly job: Job;
  readonly stage: StageKey;
  readonly fields: FieldDefs;
  readonly record: StageRecord | null;
  /** What the record says with everything known now; at signing it may have said something else. */
  readonly verdictNow: Verdict | null;
  readonly inputs: StageInputs[StageKey];
  readonly context: JobContext;
  readonly choices: ReferenceChoices;
  /** The thermostat of the control setup, with the maker's labels. */
  readonly control: ControlModel | null;
  readonly revisions: readonly StageRecord[];
  readonly mayEdit: boolean;
  readonly maySign: boolean;
  readonly mayReopen: boolean;
  /** The company's own clock. */
  readonly timeZone: string;
  /** Offered as the signature of the person signed in. */
  readonly signerName: string;
};

/** One stage record with what its form and its findings need. */
export function stageView(scope: TenantScope, jobId: string, stage: StageKey): Promise<StageView> {
  return withTenant(scope, () => readStageView(scope, jobId, stage));
}

async function readStageView(scope: TenantScope, jobId: string, stage: StageKey): Promise<StageView> {
  const job = await getJob(scope, jobId);
  const records = await stageRecords(scope).latest(job.id);
  const context = await jobContext(scope, job, records);
  const choices = await referenceChoices(scope, job, context);
  const revisions = await stageRecords(scope).revisions(job.id, stage);
  const people = await members(scope).list();
  const { controlModelId } = context.inputs.control_setup;
  const record = records[stage];
  const open = record?.state !== "signed";
  return {
    job,
    stage,
    fields: STAGE_FIELDS[stage],
    record,
    verdictNow: evaluateJob(context).verdicts[stage],
    inputs: record?.inputs ?? emptyStage(stage),
    context,
    choices,
    // In the version the job rests on, which may be off the lists.
    control:
      controlModelId === null
        ? null
        : await catalog(scope).findControl(asId<"control model">(controlModelId)),
    revisions,
    mayEdit: open && may(scope.role, EDIT_PERMISSION[stage]),
    maySign: open && record !== null && may(scope.role, SIGN_PERMISSION[stage]),
    mayReopen: !open && may(scope.role, "record.reopen"),
    timeZone: (await company(scope).get()).timeZone,
    signerName: people.find((one) => one.userId === scope.userId)?.name ?? "",
  };
}

/** What can be chosen now, and what the job already rests on though the catalog has moved on or retired it. */
export async function referenceChoices(
  scope: TenantScope,
  job: Job,
  context: JobContext,
): Promise<ReferenceChoices> {
  const chosen = new Set(STAGES.flatMap((stage) => Object.values<unknown>(context.inputs[stage])));
  const equipment = await catalog(scope).listEquipment();
  const controls = await catalog(scope).listControls();
  const olderControls = (await catalog(scope).listControls("all")).filter(
    ({ id }) => chosen.has(id) && !controls.some((one) => one.id === id),
  );
  const tools = await instruments(scope).list("all");
  const { model } = context;
  const older = model !== null && !equipment.some(({ id }) => id === model.id) ? [model] : [];
  const imports = await logs(scope).list(job.id);
  const demo = (isDemo: boolean) => (isDemo ? " (demo data)" : "");
  return {
    equipment: [
      ...equipment.map((one) => ({
        value: one.id as string,
        label: `${one.maker} ${one.name}, ${one.nominalTons} ton${demo(one.demoData)}`,
      })),
      ...older.map((one) => ({
        value: one.id as string,
        label: `${one.maker} ${one.name}, ${one.nominalTons} ton, version ${one.version} (this job's)`,
      })),
    ],
    control: [
      ...controls.map((one) => ({
        value: one.id as string,
        label: `${one.maker} ${one.name}${demo(one.demoData)}`,
      })),
      ...olderControls.map((one) => ({
        value: one.id as string,
        label: `${one.maker} ${one.name}, as it was (this job's)`,
      })),
    ],
    instrument: [
      ...tools
        .filter((one) => one.retired !== true)
        .map((one) => ({ value: one.id as string, label: one.name })),
      ...tools
        .filter((one) => one.retired === true && chosen.has(one.id))
        .map((one) => ({ value: one.id as string, label: `${one.name} (retired)` })),
    ],
    log: imports.flatMap(({ id, sourceName, summary }) =>
      summary === null
        ? []
        : [
            {
              value: id,
              label: `${sourceName}: ${summary.firstAt.slice(0, 10)} to ${summary.lastAt.slice(0, 10)}`,
            },
          ],
    ),
  };
}

/** A model with its tables, for a form in which it has just been chosen. */
export async function readModel(scope: TenantScope, modelId: string): Promise<EquipmentModel> {
  const model = await catalog(scope).findEquipment(asId<"equipment model">(modelId));
  if (!model) throw notFound();
  return model;
}

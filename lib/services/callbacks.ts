import { callbacks } from "@/lib/db/callbacks";
import { stageRecords } from "@/lib/db/stage-records";
import { withTenant } from "@/lib/db/with-tenant";
import type { Callback, CallbackEvidence } from "@/lib/domain/callbacks";
import { asId, type CallbackId } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import { STAGE_NAMES } from "@/lib/domain/stages";
import { notFound } from "@/lib/errors";
import type { LogCallbackInput, WorkCallbackInput } from "@/lib/schemas/callback";
import { type JobView, jobView } from "./job-view";
import { getJob } from "./jobs";

/** Takes a complaint down and keeps beside it what the job's record says at that moment. */
export function logCallback(scope: TenantScope, input: LogCallbackInput): Promise<CallbackId> {
  return withTenant(scope, async () => {
    const jobId = asId<"job">(input.jobId);
    await stageRecords(scope).lock(jobId);
    const evidence = evidenceOf(await jobView(scope, jobId));
    return callbacks(scope).add({ ...input, jobId, evidence });
  });
}

/** Keeps cause, fix and outcome. */
export function workOnCallback(scope: TenantScope, input: WorkCallbackInput): Promise<{ jobId: string }> {
  return withTenant(scope, async () => {
    const { callbackId, expectedVersion, ...work } = input;
    const id = asId<"callback">(callbackId);
    const jobId = await callbacks(scope).jobOf(id);
    if (!jobId) throw notFound();
    await stageRecords(scope).lock(jobId);
    await callbacks(scope).work(jobId, id, expectedVersion, work);
    return { jobId };
  });
}

/** The company's callbacks, open ones first. */
export function listCallbacks(scope: TenantScope): Promise<readonly Callback[]> {
  return callbacks(scope).list(null);
}

/** The callbacks of one job. */
export async function jobCallbacks(scope: TenantScope, jobId: string): Promise<readonly Callback[]> {
  const job = await getJob(scope, jobId);
  return callbacks(scope).list(job.id);
}

function evidenceOf({ context, evaluation }: JobView): CallbackEvidence {
  const { log, inputs } = context;
  const { airflow_setup: airflow, control_setup: controls, equipment_selection: selection } = inputs;
  const setting = (label: string, value: string | number | null, unit = "") =>
    value === null || value === "" ? [] : [`${label}: ${value}${unit}`];
  return {
    fallsShort: evaluation.ledger
      .filter((line) => line.verdict === "falls short")
      .map((line) => `${line.group}: ${line.label}`),
    log: log
      ? `${log.firstAt.slice(0, 10)} to ${log.lastAt.slice(0, 10)}: ${log.hoursAboveLimit.toFixed(0)} of ${log.loggedHours.toFixed(0)} hours above ${log.limitPct} %, mean ${log.meanRhPct.toFixed(0)} %`
      : null,
    settings: [
      ...setting("Capacity setting", selection.capacitySetting),
      ...setting("First-stage airflow setting", airflow.firstStageAirflowSetting),
      ...setting("Second-stage airflow setting", airflow.secondStageAirflowSetting),
      ...setting("Fan run-on after cooling", controls.fanRunOnAfterCoolingS, " s"),
      ...setting("Fan between calls", controls.fanBetweenCalls),
      ...setting(`${STAGE_NAMES.control_setup}, setpoint`, controls.coolingSetpointF, " °F"),
    ],
  };
}

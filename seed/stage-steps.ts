import { stageRecords } from "@/lib/db/stage-records";
import type { JobId } from "@/lib/domain/ids";
import { may } from "@/lib/domain/roles";
import { EDIT_PERMISSION, SIGN_PERMISSION, stagesWith } from "@/lib/domain/stage-permissions";
import { emptyStage, STAGE_NAMES, type StageInputs, type StageKey } from "@/lib/domain/stages";
import { reopenStage, saveStage, signStage } from "@/lib/services/stages";
import type { Actor, DemoWorld } from "./world";

/** Fills a stage record of a job as one person would, and answers the version to go on from. */
export async function fill<S extends StageKey>(
  world: DemoWorld,
  jobId: JobId,
  stage: S,
  by: Actor,
  inputs: Partial<StageInputs[S]>,
  expectedVersion: number | null = null,
): Promise<number> {
  const scope = world.scopes[by];
  const permission = EDIT_PERMISSION[stage];
  if (!may(scope.role, permission)) throw new Error(`${by} may not fill in ${STAGE_NAMES[stage]}.`);
  const { version } = await saveStage(scope, stagesWith(EDIT_PERMISSION, permission), {
    jobId,
    stage,
    expectedVersion,
    inputs: { ...emptyStage(stage), ...inputs },
  });
  return version;
}

/** Fills and signs. */
export async function fillAndSign<S extends StageKey>(
  world: DemoWorld,
  jobId: JobId,
  stage: S,
  by: Actor,
  inputs: Partial<StageInputs[S]>,
): Promise<void> {
  const expectedVersion = await fill(world, jobId, stage, by, inputs);
  const scope = world.scopes[by];
  const permission = SIGN_PERMISSION[stage];
  if (!may(scope.role, permission)) throw new Error(`${by} may not sign ${STAGE_NAMES[stage]}.`);
  await signStage(scope, stagesWith(SIGN_PERMISSION, permission), {
    jobId,
    stage,
    expectedVersion,
    signatureName: world.names[by],
  });
}

/** Reopens a signed record with its reason, and answers the version to go on from. */
export async function reopen(
  world: DemoWorld,
  jobId: JobId,
  stage: StageKey,
  by: Actor,
  reason: string,
): Promise<number> {
  const scope = world.scopes[by];
  await reopenStage(scope, { jobId, stage, reason });
  const reopened = (await stageRecords(scope).latest(jobId))[stage];
  if (!reopened) throw new Error(`${STAGE_NAMES[stage]} was reopened and cannot be found.`);
  return reopened.version;
}

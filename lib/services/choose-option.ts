import { options } from "@/lib/db/options";
import { stageRecords } from "@/lib/db/stage-records";
import { inputsWithOption, LEAST_OPTIONS, stagesChangedBy } from "@/lib/domain/options";
import type { TenantScope } from "@/lib/domain/scope";
import { STAGE_NAMES, STAGES } from "@/lib/domain/stages";
import { AppError } from "@/lib/errors";
import type { ChooseOptionInput } from "@/lib/schemas/option";
import { jobContext } from "./evaluate";
import { getJob } from "./jobs";
import { queueForecast } from "./keep-forecast";
import { optionOf, withOptions } from "./options";
import { reopenStage, saveStage } from "./stages";

/**
 * Chooses an option: fills the records it decides, and keeps the reason in the selection and on the trail. A signed
 * record that would change is reopened only when asked for; its signed revision stays.
 */
export function chooseOption(scope: TenantScope, input: ChooseOptionInput): Promise<void> {
  return withOptions(scope, input.jobId, async (jobId, found) => {
    const option = optionOf(found, input.optionId);
    if (option.version !== input.expectedVersion)
      throw new AppError(
        "CONFLICT",
        `${option.updatedByName} changed “${option.label}” just now. Look at it again, then choose.`,
      );
    if (found.length < LEAST_OPTIONS)
      throw new AppError(
        "CONFLICT",
        "One option is no comparison. Duplicate it, change one thing, then choose.",
      );
    const job = await getJob(scope, jobId);
    const records = await stageRecords(scope).latest(jobId);
    const { inputs } = await jobContext(scope, job, records);
    const after = inputsWithOption(inputs, option.inputs);
    const changed = stagesChangedBy(inputs, option.inputs);
    const signed = changed.filter((stage) => records[stage]?.state === "signed");
    if (signed.length > 0 && !input.reopenSigned) {
      const names = signed.map((stage) => STAGE_NAMES[stage]).join(", ");
      throw new AppError(
        "SIGNED_RECORD",
        `Signed and would change: ${names}. Tick “reopen” to open a new revision of each, or keep what is signed.`,
        {
          details: { signed },
        },
      );
    }
    await options(scope).choose(jobId, option, await options(scope).choice(jobId), input.reason);
    for (const stage of STAGES) {
      const record = records[stage];
      const isSelection = stage === "equipment_selection";
      const open = record?.state !== "signed" || changed.includes(stage);
      if (!changed.includes(stage) && !(isSelection && open)) continue;
      const reopened =
        record?.state === "signed"
          ? await reopenStage(scope, {
              jobId,
              stage,
              reason: `Option “${option.label}” chosen: ${input.reason}`.slice(0, 200),
            })
          : null;
      await saveStage(scope, [stage], {
        jobId,
        stage,
        expectedVersion: reopened?.version ?? record?.version ?? null,
        inputs: isSelection ? { ...after[stage], reason: input.reason } : after[stage],
      });
    }
    if (job.weatherFileId !== null) await queueForecast(scope, jobId, `“${option.label}”, job ${job.number}`);
  });
}

import { createHash } from "node:crypto";
import { catalog } from "@/lib/db/catalog";
import { options } from "@/lib/db/options";
import { stageRecords } from "@/lib/db/stage-records";
import { withTenant } from "@/lib/db/with-tenant";
import type { EquipmentModel } from "@/lib/domain/catalog";
import type { JobContext } from "@/lib/domain/evaluate";
import { asId, isUuid, type JobId, type OptionId } from "@/lib/domain/ids";
import {
  MOST_OPTIONS,
  type Option,
  type OptionChoice,
  type OptionInputs,
  optionFields,
  optionFromRecords,
  optionSchema,
} from "@/lib/domain/options";
import { may } from "@/lib/domain/roles";
import type { TenantScope } from "@/lib/domain/scope";
import { STAGES, type StageKey } from "@/lib/domain/stages";
import { AppError, invalidInput, notFound } from "@/lib/errors";
import type {
  AddOptionInput,
  MoveOptionInput,
  RemoveOptionInput,
  SaveOptionInput,
} from "@/lib/schemas/option";
import { jobContext } from "./evaluate";
import { type ReferenceChoices, referenceChoices } from "./job-view";
import { getJob } from "./jobs";
import { type WeatherInShort, weatherInShort } from "./weather-year";

export type OptionsView = {
  readonly jobId: string;
  readonly options: readonly Option[];
  /** The equipment of the options, by id, with its tables. */
  readonly models: Readonly<Record<string, EquipmentModel>>;
  readonly context: JobContext;
  /** The year the options are forecast in; `null` while the job has none. */
  readonly weather: WeatherInShort | null;
  readonly choice: OptionChoice | null;
  readonly catalog: ReferenceChoices;
  /** Records that are signed: choosing an option that changes one asks first. */
  readonly signed: readonly StageKey[];
  readonly mayEdit: boolean;
};

/** A job's options with what their comparison needs. */
export function optionsView(scope: TenantScope, jobId: string): Promise<OptionsView> {
  return withTenant(scope, async () => {
    const job = await getJob(scope, jobId);
    const records = await stageRecords(scope).latest(job.id);
    const found = await options(scope).list(job.id);
    const context = await jobContext(scope, job, records);
    return {
      jobId: job.id,
      options: found,
      models: await modelsOf(scope, found),
      context,
      weather: await weatherInShort(scope, job.weatherFileId),
      choice: await options(scope).choice(job.id),
      catalog: await referenceChoices(scope, job, context),
      signed: STAGES.filter((stage) => records[stage]?.state === "signed"),
      mayEdit: may(scope.role, "design.edit"),
    };
  });
}

/** The option a job was built from, with the reason; `null` while none is chosen. */
export async function chosenOption(scope: TenantScope, jobId: JobId): Promise<OptionChoice | null> {
  return options(scope).choice((await getJob(scope, jobId)).id);
}

async function modelsOf(scope: TenantScope, found: readonly Option[]) {
  const models: Record<string, EquipmentModel> = {};
  for (const { inputs } of found) {
    const id = inputs.equipmentModelId;
    if (id === null || id in models || !isUuid(id)) continue;
    const model = await catalog(scope).findEquipment(asId<"equipment model">(id));
    if (model) models[id] = model;
  }
  return models;
}

/** Adds an option: a copy of another one, or what the records decide now. */
export function addOption(scope: TenantScope, input: AddOptionInput): Promise<OptionId> {
  return withOptions(scope, input.jobId, async (jobId, found) => {
    if (found.length >= MOST_OPTIONS)
      throw new AppError("CONFLICT", `A job has at most ${MOST_OPTIONS} options. Remove one first.`);
    const copied = input.copyOf === null ? null : optionOf(found, input.copyOf);
    const inputs = copied?.inputs ?? (await decidedNow(scope, jobId));
    // A copy stands beside its original, so that the one thing changed can be seen.
    const at = copied === null ? found.length : found.indexOf(copied) + 1;
    const id = await options(scope).add(jobId, at, {
      label: input.label,
      inputs,
      inputsHash: hashOf(inputs),
    });
    const order = found.map((one) => one.id);
    await options(scope).order(jobId, [...order.slice(0, at), id, ...order.slice(at)]);
    return id;
  });
}

/** Saves an option's name and values. */
export function saveOption(
  scope: TenantScope,
  input: SaveOptionInput,
): Promise<{ readonly version: number }> {
  return withOptions(scope, input.jobId, async (jobId, found) => {
    const option = optionOf(found, input.optionId);
    const inputs = readInputs(input.inputs);
    await refuseUnknownModel(scope, inputs);
    await options(scope).save(jobId, option, input.expectedVersion, {
      label: input.label,
      inputs,
      inputsHash: hashOf(inputs),
    });
    return { version: input.expectedVersion + 1 };
  });
}

/** Moves an option one place to the left or right. */
export function moveOption(scope: TenantScope, input: MoveOptionInput): Promise<void> {
  return withOptions(scope, input.jobId, async (jobId, found) => {
    const order = found.map((one) => one.id);
    const from = order.indexOf(optionOf(found, input.optionId).id);
    const to = from + input.by;
    const [moved] = order.splice(from, 1);
    if (moved === undefined || to < 0 || to > order.length) return;
    await options(scope).order(jobId, order.toSpliced(to, 0, moved));
  });
}

/** Takes an option off the table. The chosen one stays: choose another first. */
export function removeOption(scope: TenantScope, input: RemoveOptionInput): Promise<void> {
  return withOptions(scope, input.jobId, async (jobId, found) => {
    const option = optionOf(found, input.optionId);
    if ((await options(scope).choice(jobId))?.optionId === option.id)
      throw new AppError(
        "CONFLICT",
        `“${option.label}” is the chosen option. Choose another one before removing it.`,
      );
    await options(scope).remove(jobId, option);
    const left = found.flatMap((one) => (one === option ? [] : [one.id]));
    await options(scope).order(jobId, left);
  });
}

/** Reads and writes a job's options under the job's lock. */
export function withOptions<T>(
  scope: TenantScope,
  jobId: string,
  work: (jobId: JobId, found: readonly Option[]) => Promise<T>,
): Promise<T> {
  if (!isUuid(jobId)) throw notFound();
  const id = asId<"job">(jobId);
  return withTenant(scope, async () => {
    await stageRecords(scope).lock(id);
    return work(id, await options(scope).list(id));
  });
}

/** The option of that id, or the same "nothing here" for any other. */
export function optionOf(found: readonly Option[], id: string): Option {
  const option = found.find((one) => one.id === id.toLowerCase());
  if (!option) throw notFound();
  return option;
}

async function decidedNow(scope: TenantScope, jobId: JobId): Promise<OptionInputs> {
  const job = await getJob(scope, jobId);
  const { inputs } = await jobContext(scope, job, await stageRecords(scope).latest(jobId));
  return optionFromRecords(inputs);
}

function readInputs(given: Readonly<Record<string, unknown>>): OptionInputs {
  const parsed = optionSchema.safeParse(given);
  if (parsed.success) return parsed.data;
  throw invalidInput(
    parsed.error.issues.map((issue) =>
      issue.code === "unrecognized_keys"
        ? { field: issue.keys.join(", "), message: `An option has no field “${issue.keys.join(", ")}”.` }
        : { field: issue.path.join("."), message: issue.message },
    ),
  );
}

async function refuseUnknownModel(scope: TenantScope, { equipmentModelId: id }: OptionInputs): Promise<void> {
  if (id === null) return;
  const model = isUuid(id) ? await catalog(scope).findEquipment(asId<"equipment model">(id)) : null;
  if (model) return;
  const { label } = optionFields.equipmentModelId;
  throw invalidInput([{ field: "equipmentModelId", message: `${label}: choose one from the list.` }]);
}

function hashOf(inputs: OptionInputs): string {
  const sorted = Object.entries(inputs).toSorted(([one], [other]) => (one < other ? -1 : 1));
  return createHash("sha256").update(JSON.stringify(sorted)).digest("hex");
}

import { asId, isUuid, type JobId, type OptionId } from "@/lib/domain/ids";
import {
  OPTION_VERSION,
  type Option,
  type OptionChoice,
  type OptionInputs,
  readStoredOption,
} from "@/lib/domain/options";
import type { TenantScope } from "@/lib/domain/scope";
import { AppError, notFound } from "@/lib/errors";
import { appendActivity } from "./activity";
import type { Prisma } from "./generated/client";
import { asJson } from "./json";
import { changedValues } from "./stage-record-row";
import { visibleJobs } from "./visibility";
import { type TenantTransaction, withTenant } from "./with-tenant";

const FIELDS = {
  id: true,
  label: true,
  position: true,
  version: true,
  inputs: true,
  schemaVersion: true,
  updatedAt: true,
  updatedByMember: { select: { name: true } },
} as const satisfies Prisma.OptionSelect;
type Row = Prisma.OptionGetPayload<{ select: typeof FIELDS }>;

const CHOSEN = "option chosen";

export type OptionWrite = {
  readonly label: string;
  readonly inputs: OptionInputs;
  /** Hash of everything a forecast of it depends on. */
  readonly inputsHash: string;
};

/** The candidates of a job. The caller holds the job's lock while writing. */
export function options(scope: TenantScope) {
  const own = { tenantId: scope.tenantId };
  const here = (jobId: JobId) => ({ ...own, jobId, archivedAt: null, job: visibleJobs(scope) });
  return {
    list: (jobId: JobId): Promise<readonly Option[]> =>
      withTenant(scope, async (tx) => {
        const rows = await tx.option.findMany({
          where: here(jobId),
          orderBy: [{ position: "asc" }, { id: "asc" }],
          select: FIELDS,
        });
        return rows.map(toOption);
      }),

    add: (jobId: JobId, position: number, write: OptionWrite): Promise<OptionId> =>
      withTenant(scope, async (tx) => {
        const data = { ...own, jobId, position, createdBy: scope.userId, ...columnsOf(scope, write) };
        const { id } = await tx.option.create({ data, select: { id: true } });
        await tell(tx, scope, jobId, id, "option added", { after: { label: write.label, ...write.inputs } });
        return asId<"option">(id);
      }),

    save: (jobId: JobId, option: Option, expectedVersion: number, write: OptionWrite): Promise<void> =>
      withTenant(scope, async (tx) => {
        const changed = await tx.option.updateMany({
          where: { ...here(jobId), id: option.id, version: expectedVersion },
          data: { ...columnsOf(scope, write), version: { increment: 1 } },
        });
        if (changed.count === 0) {
          throw new AppError(
            "CONFLICT",
            `${option.updatedByName} changed this option while you were typing. Your values are still here; theirs are shown beside them.`,
            { details: { theirs: option.inputs, version: option.version } },
          );
        }
        const named = (label: string, inputs: OptionInputs) => ({ label, ...inputs });
        const said = changedValues(named(option.label, option.inputs), named(write.label, write.inputs));
        await tell(tx, scope, jobId, option.id, "option changed", said);
      }),

    /** Numbers the options in the given order. */
    order: (jobId: JobId, ids: readonly OptionId[]): Promise<void> =>
      withTenant(scope, async (tx) => {
        for (const [position, id] of ids.entries())
          await tx.option.updateMany({ where: { ...here(jobId), id }, data: { position } });
      }),

    /** Takes an option off the table. It stays in the database for the trail and its forecasts. */
    remove: (jobId: JobId, option: Option): Promise<void> =>
      withTenant(scope, async (tx) => {
        const data = { archivedAt: new Date(), updatedBy: scope.userId };
        await tx.option.updateMany({ where: { ...here(jobId), id: option.id }, data });
        const before = { label: option.label, ...option.inputs };
        await tell(tx, scope, jobId, option.id, "option removed", { before });
      }),

    /** Notes the choice with its reason; the records are filled by the caller, in the same transaction. */
    choose: (jobId: JobId, option: Option, before: OptionChoice | null, reason: string): Promise<void> =>
      withTenant(scope, async (tx) => {
        const changed = await tx.job.updateMany({
          where: { AND: [visibleJobs(scope), { id: jobId }] },
          data: { chosenOptionId: option.id, updatedAt: new Date(), updatedBy: scope.userId },
        });
        if (changed.count === 0) throw notFound();
        await tell(tx, scope, jobId, option.id, CHOSEN, {
          before: { label: before?.label ?? null },
          after: { label: option.label },
          reason,
        });
      }),

    /** The choice that holds, with the reason given then. */
    choice: (jobId: JobId): Promise<OptionChoice | null> =>
      withTenant(scope, async (tx) => {
        const job = await tx.job.findFirst({
          where: { AND: [visibleJobs(scope), { id: jobId }] },
          select: { chosenOption: { select: { id: true, label: true } } },
        });
        if (!job?.chosenOption) return null;
        const { id, label } = job.chosenOption;
        const entry = await tx.activity.findFirst({
          where: { ...own, jobId, action: CHOSEN, entityId: id },
          orderBy: { seq: "desc" },
          include: { actor: { select: { name: true } } },
        });
        return {
          optionId: asId<"option">(id),
          label,
          reason: entry?.reason ?? "",
          at: entry?.at.toISOString() ?? "",
          byName: entry?.actor?.name ?? "",
        };
      }),
  };
}

function columnsOf(scope: TenantScope, { label, inputs, inputsHash }: OptionWrite) {
  const { equipmentModelId } = inputs;
  return {
    label,
    inputs: asJson(inputs),
    inputsHash,
    schemaVersion: OPTION_VERSION,
    equipmentModelId: equipmentModelId !== null && isUuid(equipmentModelId) ? equipmentModelId : null,
    updatedBy: scope.userId,
    updatedAt: new Date(),
  };
}

function tell(
  tx: TenantTransaction,
  scope: TenantScope,
  jobId: JobId,
  optionId: string,
  action: string,
  said: { readonly before?: unknown; readonly after?: unknown; readonly reason?: string },
): Promise<unknown> {
  return appendActivity(tx, scope, { action, entity: "option", entityId: optionId, jobId, ...said });
}

function toOption(row: Row): Option {
  return {
    id: asId<"option">(row.id),
    label: row.label,
    position: row.position,
    version: row.version,
    inputs: readStoredOption(row.schemaVersion, row.inputs),
    updatedAt: row.updatedAt.toISOString(),
    updatedByName: row.updatedByMember.name,
  };
}

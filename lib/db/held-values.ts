import type { PlainValue } from "@/lib/domain/merge-fields";
import type { TenantScope } from "@/lib/domain/scope";
import { STAGE_NAMES, type StageKey } from "@/lib/domain/stages";
import { notFound } from "@/lib/errors";
import { appendActivity } from "./activity";
import { Prisma } from "./generated/client";
import { asJson } from "./json";
import { visibleJobs } from "./visibility";
import { withTenant } from "./with-tenant";

export const HELD_REASONS = ["after signing", "handed over"] as const;
export type HeldReason = (typeof HELD_REASONS)[number];

/** A value that reached us when the record could not take it, waiting for the office. */
export type HeldValue = {
  readonly id: string;
  readonly jobId: string;
  readonly stage: StageKey;
  readonly fieldPath: string;
  readonly base: PlainValue;
  readonly value: PlainValue;
  readonly reason: HeldReason;
  readonly byName: string;
  readonly receivedAt: string;
  readonly deviceTime: string;
};

export type NewHeldValue = Pick<HeldValue, "jobId" | "stage" | "fieldPath" | "base" | "value" | "reason"> & {
  readonly clientId: string;
  readonly deviceTime: string;
};

/** JSON's null as the column takes it. */
export const jsonValue = (value: PlainValue) => (value === null ? Prisma.JsonNull : asJson(value));

export function heldValues(scope: TenantScope) {
  const own = { tenantId: scope.tenantId };
  return {
    /** Keeps values once: the same upload again adds nothing. */
    keep: (values: readonly NewHeldValue[]): Promise<void> =>
      withTenant(scope, async (tx) => {
        const first = values[0];
        if (!first) return;
        const { count } = await tx.heldValue.createMany({
          skipDuplicates: true,
          data: values.map(({ base, value, deviceTime, ...rest }) => ({
            ...own,
            ...rest,
            userId: scope.userId,
            base: jsonValue(base),
            value: jsonValue(value),
            deviceTime: new Date(deviceTime),
          })),
        });
        if (count === 0) return;
        await appendActivity(tx, scope, {
          // Begins with the stage's name, so that the trail finds the labels of its fields.
          action: `${STAGE_NAMES[first.stage]}: late readings kept for the office`,
          entity: "stage record",
          entityId: null,
          jobId: first.jobId,
          after: Object.fromEntries(values.map(({ fieldPath, value }) => [fieldPath, value])),
          reason: first.reason === "after signing" ? "came after signing" : "handed over by a phone",
        });
      }),

    /** How many values of this person wait for the office. */
    count: (): Promise<number> =>
      withTenant(scope, (tx) =>
        tx.heldValue.count({ where: { ...own, userId: scope.userId, state: "waiting" } }),
      ),

    /** What waits for a decision about a job, oldest first. */
    waiting: (jobId: string): Promise<readonly HeldValue[]> =>
      withTenant(scope, async (tx) => {
        const rows = await tx.heldValue.findMany({
          where: { ...own, jobId, state: "waiting", job: visibleJobs(scope) },
          orderBy: [{ receivedAt: "asc" }, { fieldPath: "asc" }],
          include: { member: { select: { name: true } } },
        });
        return rows.map((row) => ({
          id: row.id,
          jobId: row.jobId,
          stage: row.stage as StageKey,
          fieldPath: row.fieldPath,
          base: row.base as PlainValue,
          value: row.value as PlainValue,
          reason: row.reason as HeldReason,
          byName: row.member.name,
          receivedAt: row.receivedAt.toISOString(),
          deviceTime: row.deviceTime.toISOString(),
        }));
      }),

    /** Notes what the office decided about one value. Refuses one that is decided already. */
    decide: (jobId: string, id: string, state: "taken" | "discarded"): Promise<void> =>
      withTenant(scope, async (tx) => {
        const changed = await tx.heldValue.updateMany({
          where: { ...own, id, jobId, state: "waiting", job: visibleJobs(scope) },
          data: { state, decidedAt: new Date(), decidedBy: scope.userId },
        });
        if (changed.count === 0) throw notFound();
        const row = await tx.heldValue.findFirstOrThrow({ where: { ...own, id } });
        await appendActivity(tx, scope, {
          action: `${STAGE_NAMES[row.stage as StageKey]}: late reading ${state}`,
          entity: "stage record",
          entityId: null,
          jobId,
          after: { [row.fieldPath]: row.value },
        });
      }),
  };
}

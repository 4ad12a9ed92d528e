import type { TenantScope } from "@/lib/domain/scope";
import { asJson } from "./json";
import { type TenantTransaction, withTenant } from "./with-tenant";

export type ActivityEntry = {
  readonly action: string;
  readonly entity: string;
  readonly entityId: string | null;
  readonly jobId?: string | null;
  readonly before?: unknown;
  readonly after?: unknown;
  readonly reason?: string | null;
};

export type ActivityLine = {
  readonly seq: string;
  readonly at: string;
  readonly actorName: string;
  readonly action: string;
  readonly entity: string;
  readonly entityId: string | null;
  readonly job: { readonly id: string; readonly number: number } | null;
  readonly before: unknown;
  readonly after: unknown;
  readonly reason: string | null;
};

/** Adds to the trail inside the change it tells of, so that neither exists without the other. */
export async function appendActivity(
  tx: TenantTransaction,
  scope: TenantScope,
  entry: ActivityEntry,
): Promise<void> {
  const after = scope.tokenName === undefined ? entry.after : through(scope.tokenName, entry.after);
  await tx.activity.createMany({
    data: {
      tenantId: scope.tenantId,
      actorId: scope.userId,
      ...(scope.tokenName === undefined ? {} : { via: "token" }),
      action: entry.action,
      entity: entry.entity,
      entityId: entry.entityId,
      jobId: entry.jobId ?? null,
      reason: entry.reason ?? null,
      ...(entry.before === undefined ? {} : { before: asJson(entry.before) }),
      ...(after === undefined ? {} : { after: asJson(after) }),
    },
  });
}

/** What a program did in a member's name says so. */
function through(tokenName: string, after: unknown): unknown {
  return { ...(typeof after === "object" ? after : {}), through: `API token “${tokenName}”` };
}

export function activity(scope: TenantScope) {
  return {
    /** The newest entries first, of one job or of the whole company, before a sequence number. */
    list: (of: {
      readonly jobId?: string;
      readonly beforeSeq?: string;
      readonly take: number;
    }): Promise<readonly ActivityLine[]> =>
      withTenant(scope, async (tx) => {
        const rows = await tx.activity.findMany({
          where: {
            tenantId: scope.tenantId,
            ...(of.jobId ? { jobId: of.jobId } : {}),
            ...(of.beforeSeq ? { seq: { lt: BigInt(of.beforeSeq) } } : {}),
          },
          orderBy: { seq: "desc" },
          take: of.take,
          include: { actor: { select: { name: true } }, job: { select: { id: true, number: true } } },
        });
        return rows.map((row) => ({
          seq: row.seq.toString(),
          at: row.at.toISOString(),
          actorName: row.actor?.name ?? "Dewledger",
          action: row.action,
          entity: row.entity,
          entityId: row.entityId,
          job: row.job,
          before: row.before,
          after: row.after,
          reason: row.reason,
        }));
      }),
  };
}

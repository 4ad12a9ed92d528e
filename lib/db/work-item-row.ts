import { asId } from "@/lib/domain/ids";
import type { WorkItem, WorkState } from "@/lib/domain/work";
import type { Prisma } from "./generated/client";

/** What of a row people see. */
export const FIELDS = {
  id: true,
  task: true,
  title: true,
  state: true,
  done: true,
  total: true,
  attempt: true,
  problem: true,
  result: true,
  nextTryAt: true,
  startedAt: true,
  finishedAt: true,
  createdAt: true,
  createdByMember: { select: { name: true } },
} as const satisfies Prisma.WorkItemSelect;

export function toItem(row: Prisma.WorkItemGetPayload<{ select: typeof FIELDS }>): WorkItem {
  const { createdByMember, ...item } = row;
  return {
    ...item,
    id: asId<"work item">(row.id),
    state: row.state as WorkState,
    nextTryAt: row.nextTryAt?.toISOString() ?? null,
    startedAt: row.startedAt?.toISOString() ?? null,
    finishedAt: row.finishedAt?.toISOString() ?? null,
    createdAt: row.createdAt.toISOString(),
    createdByName: createdByMember.name,
  };
}

import { company } from "@/lib/db/company";
import { workItems } from "@/lib/db/work-items";
import { isUuid } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import type { WorkItem } from "@/lib/domain/work";
import type { WorkIdInput } from "@/lib/schemas/work";

const PAGE = 50;

export type WorkView = {
  readonly items: readonly WorkItem[];
  /** Where the older work begins; `null` when there is none. */
  readonly olderThan: string | null;
  readonly timeZone: string;
};

/** The company's background work, newest first. An address that names no work begins at the newest. */
export async function workView(scope: TenantScope, before: string | undefined): Promise<WorkView> {
  const [found, { timeZone }] = await Promise.all([
    workItems(scope).list(["running", "waiting", "failed", "done", "cancelled"], {
      take: PAGE + 1,
      before: before !== undefined && isUuid(before) ? before : null,
    }),
    company(scope).get(),
  ]);
  const items = found.slice(0, PAGE);
  return { items, olderThan: found.length > PAGE ? (items.at(-1)?.id ?? null) : null, timeZone };
}

/** Puts failed work back into the queue. */
export function retryWork(scope: TenantScope, { workId }: WorkIdInput): Promise<void> {
  return workItems(scope).retry(workId);
}

import { asId, type SavedViewId } from "@/lib/domain/ids";
import type { SavedView, SavedViewScreen } from "@/lib/domain/saved-views";
import type { TenantScope } from "@/lib/domain/scope";
import { notFound } from "@/lib/errors";
import { withTenant } from "./with-tenant";

/** Questions kept by name: a person's own and those shared in the company. */
export function savedViews(scope: TenantScope) {
  const own = { tenantId: scope.tenantId, userId: scope.userId };
  return {
    list: (screen: SavedViewScreen): Promise<readonly SavedView[]> =>
      withTenant(scope, async (tx) => {
        const rows = await tx.savedView.findMany({
          where: { tenantId: scope.tenantId, screen, OR: [{ userId: scope.userId }, { shared: true }] },
          orderBy: [{ name: "asc" }, { id: "asc" }],
        });
        return rows.map((row) => ({
          id: asId<"saved view">(row.id),
          name: row.name,
          query: typeof row.query === "string" ? row.query : "",
          shared: row.shared,
          own: row.userId === scope.userId,
        }));
      }),

    /** Keeps a question; one of the same name is replaced. */
    save: (
      screen: SavedViewScreen,
      view: { readonly name: string; readonly query: string; readonly shared: boolean },
    ): Promise<SavedViewId> =>
      withTenant(scope, async (tx) => {
        const { name, query, shared } = view;
        const row = await tx.savedView.upsert({
          where: { tenantId_userId_screen_name: { ...own, screen, name } },
          create: { ...own, screen, name, query, shared },
          update: { query, shared, version: { increment: 1 } },
          select: { id: true },
        });
        return asId<"saved view">(row.id);
      }),

    /** Only who keeps it may remove it. */
    remove: (screen: SavedViewScreen, id: SavedViewId): Promise<void> =>
      withTenant(scope, async (tx) => {
        const removed = await tx.savedView.deleteMany({ where: { ...own, screen, id } });
        if (removed.count === 0) throw notFound();
      }),
  };
}

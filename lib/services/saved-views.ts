import { savedViews } from "@/lib/db/saved-views";
import { asId, type SavedViewId } from "@/lib/domain/ids";
import type { SavedView, SavedViewScreen } from "@/lib/domain/saved-views";
import type { TenantScope } from "@/lib/domain/scope";
import type { RemoveViewInput, SaveViewInput } from "@/lib/schemas/saved-view";

/** The questions of a screen this person can open. */
export function listSavedViews(scope: TenantScope, screen: SavedViewScreen): Promise<readonly SavedView[]> {
  return savedViews(scope).list(screen);
}

/** Keeps a question; one of the same name is replaced. */
export function saveView(
  scope: TenantScope,
  screen: SavedViewScreen,
  input: SaveViewInput,
): Promise<SavedViewId> {
  return savedViews(scope).save(screen, input);
}

export function removeView(
  scope: TenantScope,
  screen: SavedViewScreen,
  input: RemoveViewInput,
): Promise<void> {
  return savedViews(scope).remove(screen, asId<"saved view">(input.viewId));
}

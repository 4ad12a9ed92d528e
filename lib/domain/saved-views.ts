import type { SavedViewId } from "./ids";

/** The screens whose questions can be kept. */
export const SAVED_VIEW_SCREENS = ["jobs", "across-jobs"] as const;
export type SavedViewScreen = (typeof SAVED_VIEW_SCREENS)[number];

/** A question as it stood in the address, under a name. */
export type SavedView = {
  readonly id: SavedViewId;
  readonly name: string;
  /** The part of the address after the question mark. */
  readonly query: string;
  /** True when the whole company sees it. */
  readonly shared: boolean;
  /** True when the person asking keeps it, and may therefore remove it. */
  readonly own: boolean;
};

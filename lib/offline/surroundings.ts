import type { Doors } from "./doors";
import type { Who } from "./outbox";
import type { UnsentNote } from "./owner";
import type { FieldStore } from "./store";

/** What a phone stands on; a test gives its own. */
export type Surroundings = {
  readonly store: FieldStore;
  readonly doors: Doors;
  readonly newId: () => string;
  readonly now: () => Date;
  /** Whose phone it is now; nobody after signing out. */
  readonly owner: { readonly get: () => Who | null; readonly set: (who: Who | null) => void };
  readonly unsent: UnsentNote;
  /** Runs the work unless another page of this phone is at it. */
  readonly alone: (work: () => Promise<void>) => Promise<void>;
  /** Tells the other pages of this phone that something was kept. */
  readonly tellOthers: () => void;
};

import { DRAFT_VERSION, type Draft } from "./draft";

/**
 * Reads a draft as this or an older version of the application kept it. One that a newer version kept stays as
 * it is, because this page cannot know what it would cut off.
 *
 * @throws Error for a draft of a newer version, or of none.
 */
export function readKeptDraft(kept: unknown): Draft {
  const version =
    typeof kept === "object" && kept !== null && "draftVersion" in kept ? kept.draftVersion : null;
  // Version 1 had no clocks.
  if (version === 1) return { ...(kept as Draft), draftVersion: DRAFT_VERSION, clocks: {} };
  if (version === DRAFT_VERSION) return kept as Draft;
  throw new Error(
    "These readings were kept by a newer version of this page. Load the page again with a signal to see them.",
  );
}

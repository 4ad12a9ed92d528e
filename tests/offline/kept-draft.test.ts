import { expect, test } from "vitest";
import { DRAFT_VERSION, enter, valuesOf, withUpload } from "@/lib/offline/draft";
import { readKeptDraft } from "@/lib/offline/kept-draft";

/** As version 1 kept it: an entry, an unanswered upload, a disagreement; no clocks. */
const FIRST_VERSION = {
  draftVersion: 1,
  known: { outdoorDbF: 90, notes: null },
  pending: {
    outdoorDbF: { base: 90, value: 91, enteredAt: "2026-06-01T10:00:00.000Z", held: null },
    notes: {
      base: null,
      value: "mine",
      enteredAt: "2026-06-01T10:01:00.000Z",
      held: { why: "conflict", theirs: "theirs" },
    },
  },
  upload: {
    clientId: "01900000-0000-4000-8000-000000000001",
    deviceTime: "2026-06-01T10:00:05.000Z",
    fields: { outdoorDbF: { base: 90, value: 91 } },
  },
};

test("a draft of the first version opens with everything in it and can be worked on", () => {
  const draft = readKeptDraft(structuredClone(FIRST_VERSION));
  expect(draft).toEqual({ ...FIRST_VERSION, draftVersion: DRAFT_VERSION, clocks: {} });
  expect(valuesOf(draft)).toEqual({ outdoorDbF: 91, notes: "mine" });
  const next = enter(draft, "supplyVoltage", 240, "2026-06-01T10:02:00.000Z");
  // The upload that was on its way goes out again as it was.
  expect(withUpload(next, "new id", "").upload).toEqual(FIRST_VERSION.upload);
});

test.each([{ ...FIRST_VERSION, draftVersion: DRAFT_VERSION + 1 }, {}, null, "text"])(
  "what this page cannot read is refused, never cut down: %j",
  (kept) => {
    expect(() => readKeptDraft(kept)).toThrow(/newer version/);
  },
);

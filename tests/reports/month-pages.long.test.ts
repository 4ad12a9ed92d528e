import { expect, test } from "vitest";
import { COMPARED, compared } from "@/lib/domain/across-jobs";
import {
  CALLBACK_KINDS,
  CALLBACK_STATE_KEYS,
  type Callback,
  type CallbackKind,
} from "@/lib/domain/callbacks";
import { layOut } from "@/lib/reports/render-pdf";
import { documentOf } from "@/lib/reports/render-view";
import { monthOnTwoPages } from "@/lib/services/month-digest";
import { MONTH_COMPARISONS, type MonthParts } from "@/lib/services/packet-views/month";
import { PLAIN_BRAND } from "../support/packet-parts";
import { faultsOfPages, pictureFaults } from "./page-faults";
import { overlaps, readPdf } from "./read-pdf";

/** The newest callback of so many: the job of the last day of the month that has one. */
const NEWEST: Readonly<Record<number, string>> = {
  0: "No callback was reported in this month.",
  1: "10000",
  400: "10030",
};

const KINDS = Object.keys(CALLBACK_KINDS) as readonly CallbackKind[];

/** A company with many callbacks and many settings, each with a name as long as the forms take. */
function month(callbacks: number, groups: number, paper: "letter" | "a4"): MonthParts {
  const long = "Wolfeschlegelsteinhausenbergerdorff-Featherstonehaugh";
  return {
    brand: PLAIN_BRAND,
    paper,
    month: "2026-07",
    createdOn: "2026-07-31",
    revision: 3,
    reported: Array.from({ length: callbacks }, (_, at) => ({
      id: `${at}`,
      job: { number: 10_000 + at, customerName: `${long} ${at}` },
      kind: KINDS[at % KINDS.length],
      state: CALLBACK_STATE_KEYS[at % CALLBACK_STATE_KEYS.length],
      reportedOn: `2026-07-${String((at % 31) + 1).padStart(2, "0")}`,
    })) as unknown as readonly Callback[],
    waiting: callbacks,
    comparisons: MONTH_COMPARISONS.map((by) => ({
      by,
      groups: compared(
        by,
        Array.from({ length: groups }, (_, at) => ({
          value: `value ${at}`,
          name: `${by === "equipment" ? "Quillhollow Demo Works Quillhollow heat pump with a name of its own, " : "setting "}${at}`,
          jobs: 150 + at,
          complaints: at % 40,
        })),
      ),
      words: `${COMPARED[by].label}: a sentence that says what jobs with a complaint have in common, as long as those of the page.`,
    })),
  };
}

test.each([
  ["no job", 0, 0],
  ["one job", 1, 1],
  ["hundreds of jobs", 400, 60],
] as const)(
  "the owner’s month of %s is sound and at most two pages, on letter and A4",
  async (_, callbacks, groups) => {
    for (const paper of ["letter", "a4"] as const) {
      const { view, bytes } = await monthOnTwoPages(month(callbacks, groups, paper));
      const laidOut = await layOut(await documentOf(view));
      const { pages, text } = await readPdf(bytes);
      expect(pages.length).toBeLessThanOrEqual(2);
      expect(faultsOfPages(laidOut)).toEqual([]);
      expect(await pictureFaults(bytes)).toEqual([]);
      expect(pages.flatMap(overlaps)).toEqual([]);
      expect(text).toContain(`Callbacks reported ${callbacks}`);
      expect(text).toContain(NEWEST[callbacks] ?? "");
      const [, shown = "0", left = "0"] = /The (\d+) newest; (\d+) more/.exec(text) ?? [];
      if (callbacks > 1) expect(Number(shown) + Number(left)).toBe(callbacks);
      // Fewer rows than these would be no digest.
      if (callbacks > 1) expect(Number(shown)).toBeGreaterThanOrEqual(5);
      if (groups === 0) expect(text).toContain("No job has a signed startup yet.");
    }
  },
);

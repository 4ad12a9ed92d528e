import { expect, test } from "vitest";
import { changedFindings } from "@/lib/domain/finding-changes";
import { STAGES, type StageKey } from "@/lib/domain/stages/keys";
import { type Finding, finding, type Verdict } from "@/lib/engineering/findings";

const said = (id: string, verdict: Verdict | null): Finding =>
  finding(
    {
      id,
      title: `Title of ${id}`,
      equation: "",
      basis: { kind: "physics", source: "", certainty: "computed" },
      limits: [],
      checkedBy: "",
    },
    { verdict, statement: "", nextStep: null, inputs: [] },
  );
const job = (some: Partial<Record<StageKey, readonly Finding[]>>) =>
  ({ ...Object.fromEntries(STAGES.map((stage) => [stage, []])), ...some }) as Record<
    StageKey,
    readonly Finding[]
  >;

test("a check that comes out otherwise is named, once each time its rule speaks", () => {
  const before = job({
    load_summary: [said("load.a", "meets"), said("load.b", "meets")],
    startup_record: [said("startup.c", "meets"), said("startup.c", "meets"), said("startup.d", null)],
  });
  const after = job({
    load_summary: [said("load.a", "meets"), said("load.b", "falls short")],
    startup_record: [said("startup.c", "meets"), said("startup.c", "can't tell"), said("startup.d", null)],
  });
  expect(changedFindings(before, after)).toEqual([
    { title: "Title of load.b", from: "meets", to: "falls short" },
    { title: "Title of startup.c", from: "meets", to: "can't tell" },
  ]);
  expect(changedFindings(after, after)).toEqual([]);
});

test("a check that only one side makes is named with nothing on the other", () => {
  const one = job({ humidity_review: [said("review.e", "falls short")] });
  expect(changedFindings(job({}), one)).toEqual([
    { title: "Title of review.e", from: null, to: "falls short" },
  ]);
});

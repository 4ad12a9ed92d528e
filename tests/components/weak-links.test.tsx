import { renderToStaticMarkup } from "react-dom/server";
import { expect, test } from "vitest";
import { FirstToMend, WeakLinks } from "@/components/findings/weak-links";
import { weakLinks } from "@/lib/domain/attention";
import { evaluateJob } from "@/lib/domain/evaluate";
import type { JobRecords } from "@/lib/domain/jobs";
import { STAGES } from "@/lib/domain/stages/keys";
import { aJobContext, DESIGNED } from "../domain/a-job-context";

const evaluation = evaluateJob(
  aJobContext({
    ...DESIGNED,
    control_setup: { ...DESIGNED.control_setup, firstStageStartOffsetF: 1, secondStageStartOffsetF: 1 },
  }),
);
const recordsOf = (entered: readonly string[]) =>
  Object.fromEntries(
    STAGES.map((stage) => [stage, entered.includes(stage) ? {} : null]),
  ) as unknown as JobRecords;
const text = (html: string) => html.replace(/<[^>]*>/g, "");

test("weak links come in the order of the chain, what falls short first, without records not entered", () => {
  const weak = weakLinks(recordsOf(["control_setup", "load_summary", "airflow_setup"]), evaluation);
  const order = weak.map(({ stage }) => STAGES.indexOf(stage));
  expect(order).toEqual(order.toSorted());
  expect(weak.map(({ stage }) => stage)).toContain("control_setup");
  expect(weak.map(({ stage }) => stage)).not.toContain("equipment_selection");
  for (const { findings } of weak) {
    const verdicts = findings.map(({ verdict }) => verdict);
    expect(verdicts).toEqual(verdicts.toSorted().toReversed());
    expect(verdicts.every((verdict) => verdict === "falls short" || verdict === "can't tell")).toBe(true);
  }
});

test("the first to mend is the first that falls short, with its next step and its stage's address", () => {
  const weak = weakLinks(recordsOf(["control_setup"]), evaluation);
  const [first] = weak[0]?.findings ?? [];
  const html = renderToStaticMarkup(<FirstToMend jobId="j" weak={weak} />);
  expect(text(html)).toContain(`Control setup: ${first?.title} falls short.`);
  expect(text(html)).toContain(first?.nextStep ?? "no next step");
  expect(html).toContain('href="/jobs/j/control-setup"');
});

test("numbers of few findings stand open, of many they are folded", () => {
  const [some] = weakLinks(recordsOf(["control_setup"]), evaluation);
  const one = some?.findings[0];
  if (!some || !one) throw new Error("A second stage that starts with the first falls short.");
  const drawn = (count: number) =>
    renderToStaticMarkup(<WeakLinks jobId="j" weak={[{ ...some, findings: Array(count).fill(one) }]} />);
  expect(drawn(3).match(/<details[^>]* open/g)).toHaveLength(3);
  expect(drawn(4).match(/<details[^>]* open/g)).toBeNull();
});

test("a job without weak links says so and names nothing to mend", () => {
  expect(renderToStaticMarkup(<FirstToMend jobId="j" weak={[]} />)).toBe("");
  expect(renderToStaticMarkup(<WeakLinks jobId="j" weak={[]} />)).toContain("Nothing falls short");
});

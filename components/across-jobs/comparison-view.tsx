import { SpreadStrips, VerdictShares } from "@/components/charts/charts";
import type { SpreadStrip } from "@/lib/charts/spread-strips";
import type { VerdictSharesGroup } from "@/lib/charts/verdict-shares";
import {
  COMPARED,
  type ComparedBy,
  type ComparedGroup,
  type JobOfGroup,
  MEASURES,
} from "@/lib/domain/across-jobs";
import type { AcrossJobsQuery } from "@/lib/schemas/across-jobs";
import { ChosenJobs } from "./chosen-jobs";
import { ComparisonTable } from "./comparison-table";

type Props = {
  readonly query: AcrossJobsQuery;
  readonly aPage: number;
  readonly view: {
    readonly by: ComparedBy;
    readonly groups: readonly ComparedGroup[];
    readonly words: string;
    readonly spread: {
      readonly least: number;
      readonly most: number;
      readonly strips: readonly SpreadStrip[];
    } | null;
    readonly verdicts: readonly VerdictSharesGroup[] | null;
    readonly chosen: {
      readonly name: string;
      readonly value: string;
      readonly jobs: readonly JobOfGroup[];
      readonly of: number;
    } | null;
  };
};

/** One outcome by one thing: in a sentence, as counts, as a picture, and the jobs behind a line. */
export function ComparisonView({ query, view, aPage }: Props) {
  const { by, groups, words, spread, verdicts, chosen } = view;
  const measure = query.measure === null ? null : MEASURES[query.measure];
  return (
    <>
      <p className="max-w-prose text-lg">{words}</p>
      <ComparisonTable query={query} by={by} groups={groups} />
      {verdicts === null ? null : (
        <VerdictShares title={`Verdicts by ${COMPARED[by].label.toLowerCase()}`} groups={verdicts} />
      )}
      {measure === null ? null : (
        <SpreadStrips
          title={`${measure.label} by ${COMPARED[by].label.toLowerCase()}`}
          measure={measure.label}
          unit={measure.unit}
          decimals={measure.decimals}
          least={spread?.least ?? 0}
          most={spread?.most ?? 0}
          strips={spread?.strips ?? []}
          note="Bars: jobs at each value, each group to its own tallest bar. Thick line: middle half; thin line: middle 80 %; lozenge: median. Up to 40 jobs are drawn one by one; quartiles from 8 jobs on."
        />
      )}
      {chosen === null ? null : <ChosenJobs query={query} by={by} aPage={aPage} {...chosen} />}
    </>
  );
}

import { TextLink } from "@/components/ui/button";
import { EmptyState } from "@/components/ui/empty-state";
import { type Column, Table } from "@/components/ui/table";
import { CHANCE_LIMIT, COMPARED, type Contrast } from "@/lib/domain/across-jobs";
import { type AcrossJobsQuery, acrossJobsAddress } from "@/lib/schemas/across-jobs";

const points = (share: number) => `${share < 0 ? "−" : ""}${Math.abs(100 * share).toFixed(0)}`;

/** How often chance alone would bring about as much. */
const oneIn = (chance: number) =>
  chance > 0.67 ? "as often as not" : `1 in ${Math.round(1 / chance).toLocaleString("en-US")}`;

/** Each setting's value that stands out, most certain first. */
export function WhatGoesWith({
  query,
  contrasts,
  total,
}: {
  readonly query: AcrossJobsQuery;
  readonly contrasts: readonly Contrast[];
  /** Jobs with the outcome. */
  readonly total: number;
}) {
  const columns: readonly Column<Contrast>[] = [
    {
      key: "setting",
      head: "Setting",
      rowHead: true,
      cell: ({ by }) => (
        <TextLink href={`/across-jobs?${acrossJobsAddress({ ...query, by })}`}>{COMPARED[by].label}</TextLink>
      ),
    },
    {
      key: "value",
      head: "Stands out",
      cell: ({ by, group }) => (
        <TextLink
          href={`/across-jobs?${acrossJobsAddress({ ...query, by, value: group.value ?? "" })}#chosen-jobs`}
        >
          {group.name}
        </TextLink>
      ),
    },
    {
      key: "with",
      head: "With it",
      numeric: true,
      cell: ({ group }) => `${group.complaints} of ${group.jobs}`,
    },
    {
      key: "without",
      head: "Other values",
      numeric: true,
      cell: ({ rest }) => `${rest.complaints} of ${rest.jobs}`,
    },
    {
      key: "difference",
      head: "Difference, points",
      numeric: true,
      cell: ({ difference: { difference, low, high } }) =>
        `${points(difference)} (${points(low)} to ${points(high)})`,
    },
    {
      key: "says",
      head: "Chance",
      wideOnly: true,
      cell: ({ chance }) =>
        `${chance < CHANCE_LIMIT ? "more than chance" : "may be chance"}, ${oneIn(chance)}`,
    },
  ];
  return (
    <>
      <Table
        label="What goes with it, by setting"
        columns={columns}
        rows={contrasts}
        rowKey={({ by }) => by}
        empty={
          <EmptyState title="Nothing to compare">
            {total === 0
              ? "No job has this."
              : "Every job has the same value of each setting, so no setting can explain it."}
          </EmptyState>
        }
      />
      <p className="max-w-prose text-sm text-muted">
        For each setting the value that holds more than its part, against all other jobs on which the setting
        is recorded, with Newcombe’s 95 % interval. The chance is Fisher’s, times the number of values looked
        at, so that the best of many, or three jobs, are not taken for a law. What goes together is not yet a
        cause: open the jobs.
      </p>
    </>
  );
}

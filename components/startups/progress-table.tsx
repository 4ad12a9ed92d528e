"use client";

import { VerdictMark } from "@/components/findings/verdict-mark";
import { TextLink } from "@/components/ui/button";
import { EmptyState } from "@/components/ui/empty-state";
import { type Column, Table } from "@/components/ui/table";
import type { StartupProgress } from "@/lib/domain/startup-progress";
import { contactText, counted, STATE_WORDS, stillOnPhone } from "./progress-words";
import { StaleNotice } from "./stale-notice";
import { useLiveProgress } from "./use-live-progress";

type Props = { readonly first: readonly StartupProgress[]; readonly timeZone: string };

/** Today's startups while they happen. */
export function ProgressTable({ first, timeZone }: Props) {
  const { startups, isStale } = useLiveProgress("/api/field/progress", first);
  return (
    <div className="grid gap-3">
      {isStale ? <StaleNotice /> : null}
      <Table
        label="Startups of today"
        columns={columnsFor(timeZone)}
        rows={startups}
        rowKey={(row) => row.jobId}
        empty={
          <EmptyState title="No startup today">
            Startups due today, overdue ones and jobs a phone was in contact about appear here.
          </EmptyState>
        }
      />
    </div>
  );
}

function columnsFor(timeZone: string): readonly Column<StartupProgress>[] {
  return [
    {
      key: "job",
      head: "Job",
      rowHead: true,
      cell: (row) => (
        <>
          <TextLink href={`/jobs/${row.jobId}/field`}>
            {row.number} {row.customerName}
          </TextLink>
          <span className="block text-sm font-normal text-muted">
            {row.techs.length === 0 ? "Nobody assigned" : row.techs.join(", ")}
          </span>
        </>
      ),
    },
    {
      key: "due",
      head: "Due",
      cell: (row) => <span className="whitespace-nowrap">{row.startupDue ?? "—"}</span>,
      wideOnly: true,
    },
    {
      key: "done",
      head: "Readings",
      cell: (row) => (
        <>
          {row.neededDone} of {row.needed} needed
          <span className="block text-sm text-muted">
            {STATE_WORDS[row.state]}, {row.entered} entered
          </span>
        </>
      ),
    },
    {
      key: "verdict",
      head: "So far",
      cell: (row) => <VerdictMark verdict={row.verdict} look="plain" />,
      wideOnly: true,
    },
    {
      key: "contact",
      head: "Last contact",
      cell: (row) => (
        <>
          {contactText(row.lastContact, timeZone)}
          <span className="block text-sm text-muted">
            {stillOnPhone(row) ?? counted(row.photos, "photo")}
          </span>
        </>
      ),
      wideOnly: true,
    },
    {
      key: "office",
      head: "For the office",
      cell: (row) =>
        [
          row.late > 0 ? `${row.late} late to decide` : null,
          row.openQuestions > 0 ? `${counted(row.openQuestions, "question")} unanswered` : null,
        ]
          .filter((one) => one !== null)
          .join(", ") || "—",
    },
  ];
}

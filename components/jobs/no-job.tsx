import type { ReactNode } from "react";
import { TextLink } from "@/components/ui/button";
import { EmptyState } from "@/components/ui/empty-state";

type Props = {
  /** The button that opens a job, for those who may. */
  readonly newJob: ReactNode;
  readonly mayInvite: boolean;
  readonly isFiltered: boolean;
};

/** An empty jobs table: nothing fits the filters, or nothing has begun. */
export function NoJob({ newJob, mayInvite, isFiltered }: Props) {
  if (!isFiltered && newJob !== null) return <FirstSteps mayInvite={mayInvite} />;
  return (
    <EmptyState title="No job here" action={newJob}>
      Nothing matches. Clear the filters, or open a job.
    </EmptyState>
  );
}

/** What a company without a job does first, in the order in which one thing needs the other. */
function FirstSteps({ mayInvite }: { readonly mayInvite: boolean }) {
  return (
    <EmptyState title="No job yet: how to begin">
      <ol className="grid list-decimal gap-2 pl-5 text-left">
        <li>
          <TextLink href="/catalog">Catalog</TextLink>: the equipment you install with the maker’s performance
          and fan tables, pasted from a spreadsheet; your thermostats; your instruments with their accuracy.
        </li>
        {mayInvite ? (
          <li>
            <TextLink href="/company/members">Members</TextLink>: invite the office and the techs.
          </li>
        ) : null}
        <li>
          <TextLink href="/jobs/new">New job</TextLink>: the customer and the home. Then its tabs from left to
          right: load summary, equipment, airflow, controls; the tech’s startup; weeks later the humidity
          review.
        </li>
      </ol>
    </EmptyState>
  );
}

import type { Metadata } from "next";
import { ActivityTrail } from "@/components/company/activity-trail";
import { CompanyTabs } from "@/components/company/company-tabs";
import { PageHeader } from "@/components/shell/page-header";
import { EmptyState } from "@/components/ui/empty-state";
import { Pagination } from "@/components/ui/pagination";
import { pageScope } from "@/lib/server/page";
import { activityView } from "@/lib/services/activity";

export const metadata: Metadata = { title: "Activity" };

type Props = { readonly searchParams: Promise<{ readonly before?: string }> };

export default async function ActivityPage({ searchParams }: Props) {
  const scope = await pageScope("activity.read");
  const { before } = await searchParams;
  const { lines, olderThan, timeZone } = await activityView(scope, before);
  return (
    <>
      <PageHeader
        title="Activity"
        crumbs={[{ href: "/company", label: "Company" }]}
        lead="Every change, newest first. Entries are never changed or removed."
      />
      <CompanyTabs current="activity" />
      <div className="mt-5">
        {lines.length === 0 ? (
          <EmptyState title="Nothing here">
            {before ? "There are no older entries." : "The first change anyone makes will stand here."}
          </EmptyState>
        ) : (
          <ActivityTrail lines={lines} timeZone={timeZone} />
        )}
        <Pagination
          summary={before ? "Older entries" : "The newest entries"}
          previousHref={before ? "/company/activity" : null}
          nextHref={olderThan ? `/company/activity?before=${olderThan}` : null}
        />
      </div>
    </>
  );
}

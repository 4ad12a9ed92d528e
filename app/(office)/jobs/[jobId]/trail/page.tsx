import type { Metadata } from "next";
import { ActivityTrail } from "@/components/company/activity-trail";
import { Pagination } from "@/components/ui/pagination";
import { load, pageScope } from "@/lib/server/page";
import { activityView } from "@/lib/services/activity";
import { getJob } from "@/lib/services/jobs";

export const metadata: Metadata = { title: "Trail" };

type Props = {
  readonly params: Promise<{ readonly jobId: string }>;
  readonly searchParams: Promise<{ readonly before?: string }>;
};

export default async function TrailPage({ params, searchParams }: Props) {
  const scope = await pageScope("job.read");
  const job = await load(getJob(scope, (await params).jobId));
  const { before } = await searchParams;
  const { lines, olderThan, timeZone } = await activityView(scope, before, job.id);
  const here = `/jobs/${job.id}/trail`;
  return (
    <>
      <ActivityTrail lines={lines} timeZone={timeZone} />
      <Pagination
        summary={before ? "Older entries" : "The newest entries"}
        previousHref={before ? here : null}
        nextHref={olderThan ? `${here}?before=${olderThan}` : null}
      />
    </>
  );
}

import type { Metadata } from "next";
import { PageHeader } from "@/components/shell/page-header";
import { ProgressTable } from "@/components/startups/progress-table";
import { pageScope } from "@/lib/server/page";
import { startupsToday } from "@/lib/services/progress";

export const metadata: Metadata = { title: "Startups" };

export default async function StartupsPage() {
  const scope = await pageScope("job.assign");
  const { startups, timeZone } = await startupsToday(scope);
  return (
    <>
      <PageHeader
        title="Startups"
        lead="Due today or overdue, and every job a phone was in contact about within a day. Follows by itself."
      />
      <ProgressTable first={startups} timeZone={timeZone} />
    </>
  );
}

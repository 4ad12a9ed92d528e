import type { ReactNode } from "react";
import { JobHeader } from "@/components/jobs/job-header";
import { load, pageScope } from "@/lib/server/page";
import { jobView } from "@/lib/services/job-view";

export default async function JobLayout({
  params,
  children,
}: {
  readonly params: Promise<{ readonly jobId: string }>;
  readonly children: ReactNode;
}) {
  const scope = await pageScope("job.read");
  const { job, records, evaluation } = await load(jobView(scope, (await params).jobId));
  const states = Object.fromEntries(
    Object.entries(records).map(([stage, record]) => [stage, record?.state ?? null]),
  );
  return (
    <>
      <JobHeader job={job} states={states} verdicts={evaluation.verdicts} />
      {children}
    </>
  );
}

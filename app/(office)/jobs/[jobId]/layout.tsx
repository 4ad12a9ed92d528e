import type { ReactNode } from "react";
import { JobHeader } from "@/components/jobs/job-header";
import { may } from "@/lib/domain/roles";
import { load, pageScope } from "@/lib/server/page";
import { jobOfRequest } from "../job-of-request";

export default async function JobLayout({
  params,
  children,
}: {
  readonly params: Promise<{ readonly jobId: string }>;
  readonly children: ReactNode;
}) {
  const scope = await pageScope("job.read");
  const { job, records, evaluation } = await load(jobOfRequest(scope, (await params).jobId));
  const states = Object.fromEntries(
    Object.entries(records).map(([stage, record]) => [stage, record?.state ?? null]),
  );
  return (
    <>
      <JobHeader
        job={job}
        states={states}
        verdicts={evaluation.verdicts}
        mayMakePacket={may(scope.role, "packet.make")}
        mayEditCallbacks={may(scope.role, "callback.edit")}
        mayAsk={may(scope.role, "question.ask")}
      />
      {children}
    </>
  );
}

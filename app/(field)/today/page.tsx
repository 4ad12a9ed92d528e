import type { Metadata } from "next";
import { VerdictMark } from "@/components/findings/verdict-mark";
import { UserMenu } from "@/components/people/user-menu";
import { FieldShell } from "@/components/shell/field-shell";
import { TextLink } from "@/components/ui/button";
import { Card } from "@/components/ui/card";
import { EmptyState } from "@/components/ui/empty-state";
import { ROLE_NAMES } from "@/lib/domain/roles";
import { STAGE_NAMES } from "@/lib/domain/stages";
import { jobListSchema } from "@/lib/schemas/job";
import { pageScope } from "@/lib/server/page";
import { listJobs } from "@/lib/services/jobs";
import { memberName } from "@/lib/services/people";
import { shellView } from "@/lib/services/shell";

export const metadata: Metadata = { title: "Today" };

export default async function TodayPage() {
  const scope = await pageScope("startup.fill");
  const query = jobListSchema.parse({ tech: scope.userId });
  const [shell, { jobs }, name] = await Promise.all([
    shellView(scope),
    listJobs(scope, query),
    memberName(scope),
  ]);
  const open = jobs.filter((job) => job.currentStage !== null);
  return (
    <FieldShell
      brand={{ name: shell.companyName, accent: shell.accent, logoHref: shell.logoHref }}
      title="Your jobs"
      saveState={<UserMenu name={name} role={ROLE_NAMES[scope.role]} />}
    >
      {open.length === 0 ? (
        <EmptyState title="No job is assigned to you">The office assigns jobs; they appear here.</EmptyState>
      ) : (
        <ul className="grid gap-3">
          {open.map((job) => (
            <li key={job.id}>
              <Card>
                <TextLink href={`/today/${job.id}/startup`} className="block min-h-11 text-lg font-semibold">
                  {job.customerName}
                </TextLink>
                <p className="text-muted">
                  Job {job.number}, {job.place}
                </p>
                <p>
                  Startup {job.startupDue ?? "without a date"}; waits for{" "}
                  {job.currentStage ? STAGE_NAMES[job.currentStage].toLowerCase() : "nothing"}
                </p>
                {job.verdict === null ? null : <VerdictMark verdict={job.verdict} look="plain" />}
                {job.attention[0] === undefined ? null : <p className="text-sm">{job.attention[0]}</p>}
              </Card>
            </li>
          ))}
        </ul>
      )}
    </FieldShell>
  );
}

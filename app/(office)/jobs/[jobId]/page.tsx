import type { Metadata } from "next";
import { FirstToMend, WeakLinks } from "@/components/findings/weak-links";
import { ForecastLine } from "@/components/forecast/forecast-line";
import { JobFacts } from "@/components/jobs/job-facts";
import { ledgerWithLinks } from "@/components/jobs/ledger-with-links";
import { SchedulePanel } from "@/components/jobs/schedule-panel";
import { LedgerTable } from "@/components/ledger/ledger-table";
import { ChoiceLine } from "@/components/options/choice-line";
import { JobProgress } from "@/components/startups/job-progress";
import { TextLink } from "@/components/ui/button";
import { Card } from "@/components/ui/card";
import { weakLinks } from "@/lib/domain/attention";
import { may } from "@/lib/domain/roles";
import { load, pageScope } from "@/lib/server/page";
import { chosenOption } from "@/lib/services/options";
import { listTechs } from "@/lib/services/people";
import { watchedJob } from "@/lib/services/progress";
import { correctJob, scheduleJob } from "../actions";
import { jobOfRequest } from "../job-of-request";

export const metadata: Metadata = { title: "Ledger" };

export default async function LedgerPage({
  params,
}: {
  readonly params: Promise<{ readonly jobId: string }>;
}) {
  const scope = await pageScope("job.read");
  const [{ job, records, context, evaluation }, techs] = await Promise.all([
    load(jobOfRequest(scope, (await params).jobId)),
    listTechs(scope),
  ]);
  const field = may(scope.role, "job.assign") ? await watchedJob(scope, job.id) : null;
  const choice = await chosenOption(scope, job.id);
  const { lines, groups } = ledgerWithLinks(job.id, evaluation.ledger);
  const weak = weakLinks(records, evaluation);
  return (
    <div className="grid gap-8">
      <FirstToMend jobId={job.id} weak={weak} />
      <LedgerTable label={`Ledger of job ${job.number}`} lines={lines} groups={groups} />
      <div className="grid gap-8 xl:grid-cols-[minmax(0,3fr)_minmax(0,2fr)]">
        <section aria-labelledby="weak">
          <h2 id="weak" className="mb-3 text-lg font-semibold">
            Where the chain is weak
          </h2>
          <WeakLinks jobId={job.id} weak={weak} />
        </section>
        <div className="grid content-start gap-6">
          {field === null ? null : (
            <JobProgress first={field.progress} timeZone={field.timeZone} href={`/jobs/${job.id}/field`} />
          )}
          <JobFacts job={job} correct={may(scope.role, "job.create") ? correctJob : null} />
          {context.forecast === null ? null : <ForecastLine jobId={job.id} forecast={context.forecast} />}
          {choice === null ? null : (
            <Card title="Option">
              <ChoiceLine choice={choice} />
              <TextLink href={`/jobs/${job.id}/options`}>What it was compared with</TextLink>
            </Card>
          )}
          {may(scope.role, "job.assign") ? (
            <div className="no-print">
              <SchedulePanel job={job} techs={techs} schedule={scheduleJob} />
            </div>
          ) : null}
        </div>
      </div>
    </div>
  );
}

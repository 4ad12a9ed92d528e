import type { Metadata } from "next";
import { SavedViews } from "@/components/forms/saved-views";
import { JobsFilter } from "@/components/jobs/jobs-filter";
import { JobsKeys } from "@/components/jobs/jobs-keys";
import { JobsTable } from "@/components/jobs/jobs-table";
import { NoJob } from "@/components/jobs/no-job";
import { questionWith, type Search, tableAddress } from "@/components/jobs/table-address";
import { PageHeader } from "@/components/shell/page-header";
import { LinkButton } from "@/components/ui/button";
import { Notice } from "@/components/ui/notice";
import { Pagination } from "@/components/ui/pagination";
import { may } from "@/lib/domain/roles";
import { jobListSchema } from "@/lib/schemas/job";
import { pageScope } from "@/lib/server/page";
import { listJobs } from "@/lib/services/job-table";
import { judgingNow } from "@/lib/services/judge-again";
import { listTechs } from "@/lib/services/people";
import { listSavedViews } from "@/lib/services/saved-views";
import { dropView, keepView, scheduleJob } from "./actions";
import { JobCount } from "./job-count";

export const metadata: Metadata = { title: "Jobs" };

export default async function JobsPage({ searchParams }: { readonly searchParams: Promise<Search> }) {
  const scope = await pageScope("job.read");
  const asked = await searchParams;
  const query = jobListSchema.parse({ ...asked, tech: asked.tech || null });
  const [page, techs, views, judging] = await Promise.all([
    listJobs(scope, query),
    listTechs(scope),
    listSavedViews(scope, "jobs"),
    judgingNow(scope),
  ]);
  const newJob = may(scope.role, "job.create") ? (
    <LinkButton href="/jobs/new" variant="primary">
      New job
    </LinkButton>
  ) : null;
  const mayPlan = may(scope.role, "job.assign");
  const question = questionWith(asked, {});
  const csv = `/api/jobs/export?${questionWith(asked, { company: scope.tenantId })}`;
  return (
    <>
      <PageHeader
        title="Jobs"
        actions={
          <>
            {mayPlan ? <LinkButton href="/jobs/week">Week</LinkButton> : null}
            {newJob}
          </>
        }
      />
      <SavedViews screen="jobs" views={views} question={question} keep={keepView} drop={dropView} />
      <JobsFilter query={query} techs={techs} />
      {judging === null ? null : <Notice kind="information" title={judging} className="mb-3" />}
      <JobsKeys />
      <JobsTable
        jobs={page.jobs}
        query={query}
        asked={asked}
        plan={mayPlan ? { techs, schedule: scheduleJob } : null}
        empty={
          <NoJob newJob={newJob} mayInvite={may(scope.role, "members.manage")} isFiltered={question !== ""} />
        }
      />
      <Pagination
        summary={<JobCount scope={scope} query={query} shown={page.jobs.length} />}
        previousHref={page.previous === null ? null : tableAddress(asked, { before: String(page.previous) })}
        nextHref={page.next === null ? null : tableAddress(asked, { after: String(page.next) })}
      />
      <a className="text-link no-print" href={csv} download>
        All jobs of this view as CSV
      </a>
    </>
  );
}

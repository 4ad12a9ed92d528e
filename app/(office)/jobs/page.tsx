import type { Metadata } from "next";
import { JobsFilter } from "@/components/jobs/jobs-filter";
import { JobsTable } from "@/components/jobs/jobs-table";
import { PageHeader } from "@/components/shell/page-header";
import { LinkButton } from "@/components/ui/button";
import { EmptyState } from "@/components/ui/empty-state";
import { Pagination } from "@/components/ui/pagination";
import { may } from "@/lib/domain/roles";
import { jobListSchema } from "@/lib/schemas/job";
import { pageScope } from "@/lib/server/page";
import { listJobs } from "@/lib/services/jobs";
import { listTechs } from "@/lib/services/people";

export const metadata: Metadata = { title: "Jobs" };

type Search = Readonly<Record<string, string | string[] | undefined>>;

export default async function JobsPage({ searchParams }: { readonly searchParams: Promise<Search> }) {
  const scope = await pageScope("job.read");
  const asked = await searchParams;
  const query = jobListSchema.parse({ ...asked, tech: asked.tech || null });
  const [page, techs] = await Promise.all([listJobs(scope, query), listTechs(scope)]);
  const newJob = may(scope.role, "job.create") ? (
    <LinkButton href="/jobs/new" variant="primary">
      New job
    </LinkButton>
  ) : null;
  return (
    <>
      <PageHeader title="Jobs" actions={newJob} />
      <JobsFilter
        search={query.search}
        stage={query.stage}
        verdict={query.verdict}
        tech={query.tech}
        attention={query.attention === "1"}
        techs={techs}
      />
      <JobsTable
        jobs={page.jobs}
        empty={
          <EmptyState title="No job here" action={newJob}>
            Nothing matches. Clear the filters, or open a job.
          </EmptyState>
        }
      />
      <Pagination
        summary={`${page.jobs.length} jobs shown`}
        previousHref={query.before === null ? null : addressOf(asked, null)}
        nextHref={page.olderThan === null ? null : addressOf(asked, page.olderThan)}
      />
    </>
  );
}

function addressOf(asked: Search, before: number | null): string {
  const kept = Object.entries(asked).flatMap(([key, value]) =>
    typeof value === "string" && key !== "before" ? [[key, value]] : [],
  );
  const query = new URLSearchParams([
    ...kept,
    ...(before === null ? [] : [["before", String(before)]]),
  ] as string[][]);
  return `/jobs?${query}`;
}

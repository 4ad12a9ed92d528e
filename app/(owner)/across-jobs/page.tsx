import type { Metadata } from "next";
import { ComparisonView } from "@/components/across-jobs/comparison-view";
import { QuestionForm } from "@/components/across-jobs/question-form";
import { WhatGoesWith } from "@/components/across-jobs/what-goes-with";
import { SavedViews } from "@/components/forms/saved-views";
import { PageHeader } from "@/components/shell/page-header";
import { LinkButton } from "@/components/ui/button";
import { CHANCE_LIMIT, OUTCOMES_COUNTED } from "@/lib/domain/across-jobs";
import { type AcrossJobsQuery, acrossJobsAddress, acrossJobsSchema } from "@/lib/schemas/across-jobs";
import { pageScope } from "@/lib/server/page";
import { comparison, equipmentNames, JOBS_A_PAGE, whatGoesWith } from "@/lib/services/across-jobs";
import { listSavedViews } from "@/lib/services/saved-views";
import { keepQuestion, removeQuestion } from "./actions";

export const metadata: Metadata = { title: "Across jobs" };

type Search = Readonly<Record<string, string | string[] | undefined>>;
type Scope = Awaited<ReturnType<typeof pageScope>>;

export default async function AcrossJobsPage({ searchParams }: { readonly searchParams: Promise<Search> }) {
  const scope = await pageScope("across-jobs.read");
  const query = acrossJobsSchema.parse(await searchParams);
  const [equipment, saved] = await Promise.all([equipmentNames(scope), listSavedViews(scope, "across-jobs")]);
  const address = acrossJobsAddress(query);
  const csv = `/api/across-jobs/jobs?company=${scope.tenantId}&${address}`;
  return (
    <>
      <PageHeader
        title="Across jobs"
        lead="Complaints, callbacks and measurements over all jobs with a signed startup, by what the jobs have in common."
      />
      <div className="mt-5 grid gap-6">
        {query.by === null ? (
          <Overview scope={scope} query={query} />
        ) : (
          <ComparisonView
            query={query}
            view={await comparison(scope, { ...query, by: query.by })}
            aPage={JOBS_A_PAGE}
          />
        )}
        <QuestionForm key={address} query={query} equipment={equipment} />
        <p className="no-print flex flex-wrap gap-3">
          <a className="button button-secondary" href={csv} download>
            All these jobs with their facts as CSV
          </a>
          <LinkButton href="/across-jobs/instruments">Instruments and sensors</LinkButton>
          <LinkButton href="/across-jobs/months">Months on two pages (PDF)</LinkButton>
        </p>
        <SavedViews
          screen="across-jobs"
          views={saved}
          question={address}
          keep={keepQuestion}
          drop={removeQuestion}
        />
      </div>
    </>
  );
}

async function Overview({ scope, query }: { readonly scope: Scope; readonly query: AcrossJobsQuery }) {
  const { jobs, complaints, contrasts, words } = await whatGoesWith(scope, query);
  const strongest = contrasts[0];
  return (
    <>
      <p className="max-w-prose text-lg">
        {words ??
          `${complaints} of ${jobs} jobs with a signed startup have ${OUTCOMES_COUNTED[query.outcome].of}.`}
        {strongest !== undefined && strongest.chance >= CHANCE_LIMIT
          ? " With so few jobs it may still be chance."
          : ""}
      </p>
      <WhatGoesWith query={query} contrasts={contrasts} total={complaints} />
    </>
  );
}

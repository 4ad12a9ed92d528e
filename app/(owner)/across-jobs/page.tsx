import type { Metadata } from "next";
import { ChosenJobs } from "@/components/across-jobs/chosen-jobs";
import { ComparisonTable } from "@/components/across-jobs/comparison-table";
import { PageHeader } from "@/components/shell/page-header";
import { TextLink } from "@/components/ui/button";
import { TabLinks } from "@/components/ui/tab-links";
import { COMPARED, COMPARED_KEYS } from "@/lib/domain/across-jobs";
import { acrossJobsSchema } from "@/lib/schemas/across-jobs";
import { pageScope } from "@/lib/server/page";
import { acrossJobsView } from "@/lib/services/across-jobs";

export const metadata: Metadata = { title: "Across jobs" };

type Search = Readonly<Record<string, string | string[] | undefined>>;

export default async function AcrossJobsPage({ searchParams }: { readonly searchParams: Promise<Search> }) {
  const scope = await pageScope("across-jobs.read");
  const { by, groups, words, chosen } = await acrossJobsView(
    scope,
    acrossJobsSchema.parse(await searchParams),
  );
  return (
    <>
      <PageHeader
        title="Across jobs"
        lead="Humidity complaints over all jobs with a signed startup, by what the jobs have in common."
      />
      <TabLinks
        label="Compare by"
        tabs={COMPARED_KEYS.map((key) => ({
          href: `/across-jobs?by=${key}`,
          label: COMPARED[key].label,
          current: key === by,
        }))}
      />
      <div className="mt-5 grid gap-6">
        <p className="max-w-prose text-lg">{words}</p>
        <ComparisonTable by={by} groups={groups} />
        <p>
          <TextLink href="/api/across-jobs/month" prefetch={false}>
            This month on two pages (PDF)
          </TextLink>
        </p>
        {chosen === null ? null : <ChosenJobs label={COMPARED[by].label} {...chosen} />}
      </div>
    </>
  );
}

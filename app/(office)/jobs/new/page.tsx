import type { Metadata } from "next";
import { NewJobForm } from "@/components/jobs/new-job-form";
import { PageHeader } from "@/components/shell/page-header";
import { pageScope } from "@/lib/server/page";
import { listTechs } from "@/lib/services/people";
import { listWeather } from "@/lib/services/weather";
import { createJob } from "../actions";

export const metadata: Metadata = { title: "New job" };

export default async function NewJobPage() {
  const scope = await pageScope("job.create");
  const [techs, weather] = await Promise.all([listTechs(scope), listWeather(scope)]);
  return (
    <>
      <PageHeader
        title="New job"
        crumbs={[{ href: "/jobs", label: "Jobs" }]}
        lead="One system in one home for one customer."
      />
      <NewJobForm
        techs={techs}
        weather={weather.map((one) => ({ value: one.id, label: one.name }))}
        create={createJob}
      />
    </>
  );
}

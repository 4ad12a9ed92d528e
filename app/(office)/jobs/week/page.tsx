import type { Metadata } from "next";
import { WeekBoard } from "@/components/jobs/week-board";
import { PageHeader } from "@/components/shell/page-header";
import { LinkButton } from "@/components/ui/button";
import { Notice } from "@/components/ui/notice";
import { dayText } from "@/lib/domain/date-text";
import { dayAfter } from "@/lib/domain/days";
import { weekSchema } from "@/lib/schemas/job";
import { pageScope } from "@/lib/server/page";
import { weekView } from "@/lib/services/job-table";
import { listTechs } from "@/lib/services/people";
import { scheduleJob } from "../actions";

export const metadata: Metadata = { title: "Week" };

type Props = { readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>> };

export default async function WeekPage({ searchParams }: Props) {
  const scope = await pageScope("job.assign");
  const { from } = weekSchema.parse(await searchParams);
  const [{ days, today, jobs, more }, techs] = await Promise.all([weekView(scope, from), listTechs(scope)]);
  const [monday = today] = days;
  const weekOf = (steps: number) => `/jobs/week?from=${dayAfter(monday, 7 * steps)}`;
  return (
    <>
      <PageHeader
        title={`Week of ${dayText(monday)}`}
        crumbs={[{ href: "/jobs", label: "Jobs" }]}
        lead="Startups by day and tech. Move one with its list, or with the keyboard: on a job, Alt and an arrow: left and right by a day, up and down by a tech."
        actions={
          <>
            <LinkButton href={weekOf(-1)}>Week before</LinkButton>
            <LinkButton href="/jobs/week">This week</LinkButton>
            <LinkButton href={weekOf(1)}>Week after</LinkButton>
          </>
        }
      />
      {more ? (
        <Notice
          kind="information"
          title={`This week holds more than the ${jobs.length} jobs shown. Find the others in the table of jobs, by tech.`}
        />
      ) : null}
      <WeekBoard days={days} today={today} jobs={jobs} techs={techs} schedule={scheduleJob} />
    </>
  );
}

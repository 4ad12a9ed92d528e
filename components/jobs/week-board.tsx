"use client";

import type { Choice } from "@/components/ui/choice-fields";
import { cx } from "@/components/ui/cx";
import { dayText } from "@/lib/domain/date-text";
import type { JobSummary } from "@/lib/domain/jobs";
import type { Schedule } from "./use-plan";
import { WeekJob } from "./week-job";

type Props = {
  readonly days: readonly string[];
  readonly today: string;
  readonly jobs: readonly JobSummary[];
  readonly techs: readonly Choice[];
  readonly schedule: Schedule;
};

const NOBODY: Choice = { value: "", label: "Nobody yet" };

/** Who is where: a row a tech, a column a day. A job of two techs stands in both rows. */
export function WeekBoard({ days, today, jobs, techs, schedule }: Props) {
  const rows = [NOBODY, ...techs];
  return (
    <section
      aria-label="Week"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard
      tabIndex={0}
      className="relative overflow-auto border border-rule bg-sheet"
    >
      <table className="ruled-table min-w-[64rem] table-fixed">
        <caption className="sr-only">Startups of the week by tech and day</caption>
        <thead>
          <tr>
            <th scope="col" className="w-32">
              Tech
            </th>
            {days.map((day) => (
              <th key={day} scope="col" className={cx(day === today && "text-accent")}>
                {weekday(day)} {dayText(day).replace(/, \d+$/, "")}
                {day === today ? " (today)" : ""}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((tech) => (
            <tr key={tech.value}>
              <th scope="row">{tech.label}</th>
              {days.map((day) => (
                <td key={day} className="align-top">
                  {jobs
                    .filter((job) => job.startupDue === day && isOf(job, tech.value))
                    .map((job) => (
                      <WeekJob
                        key={`${job.id} ${job.version}`}
                        job={job}
                        techId={tech.value}
                        days={days}
                        techs={techs}
                        schedule={schedule}
                      />
                    ))}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function isOf(job: JobSummary, techId: string): boolean {
  return techId === "" ? job.techs.length === 0 : job.techs.some((tech) => tech.userId === techId);
}

function weekday(isoDay: string): string {
  return new Date(`${isoDay}T00:00:00Z`).toLocaleDateString("en-US", { weekday: "short", timeZone: "UTC" });
}

"use client";

import { useEffect, useRef, useState } from "react";
import type { Choice } from "@/components/ui/choice-fields";
import { cx } from "@/components/ui/cx";
import { dayText } from "@/lib/domain/date-text";
import type { JobSummary } from "@/lib/domain/jobs";
import { type PlannedJob, type PlanOf, type Schedule, usePlans } from "./use-plans";
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
  const { shown, save, problemOf } = usePlans(jobs, techs, schedule);
  const moved = useRef<number | null>(null);
  const [said, say] = useState("");
  const move = (job: PlannedJob, plan: PlanOf, where: string) => {
    moved.current = job.number;
    say(`Job ${job.number}: ${where}`);
    save(job, plan);
  };
  // The job now stands in another cell, and back in its old one when it was refused: the focus goes with it.
  useEffect(() => {
    if (shown.length === 0 || moved.current === null || document.activeElement !== document.body) return;
    document.querySelector<HTMLElement>(`[data-week-job="${moved.current}"]`)?.focus();
    if (!shown.some((job) => job.saving)) moved.current = null;
  }, [shown]);
  // On a narrow screen the week begins where its work does, beside the names, which stay.
  const board = useRef<HTMLElement>(null);
  const names = useRef<HTMLTableCellElement>(null);
  const begin = useRef<HTMLTableCellElement>(null);
  const [firstDay = today] = jobs.map((job) => job.startupDue ?? "").toSorted();
  useEffect(() => {
    if (board.current && begin.current)
      board.current.scrollLeft = begin.current.offsetLeft - (names.current?.offsetWidth ?? 0);
  }, []);
  return (
    <section
      ref={board}
      aria-label="Week"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard
      tabIndex={0}
      className="relative overflow-auto border border-rule bg-sheet"
    >
      <p role="status" className="sr-only">
        {said}
      </p>
      <table className="ruled-table min-w-[60rem] table-fixed">
        <caption className="sr-only">Startups of the week by tech and day</caption>
        <thead>
          <tr>
            <th ref={names} scope="col" className="left-0 z-2! w-32">
              Tech
            </th>
            {days.map((day) => (
              <th
                key={day}
                scope="col"
                ref={day === firstDay ? begin : null}
                className={cx(day === today && "text-accent")}
              >
                {weekday(day)} {dayText(day).replace(/, \d+$/, "")}
                {day === today ? <span className="block">(today)</span> : null}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((tech) => (
            <tr key={tech.value}>
              <th scope="row" className="sticky left-0 z-1 bg-sheet">
                {tech.label}
              </th>
              {days.map((day) => (
                <td key={day} className="align-top">
                  {shown
                    .filter((job) => job.startupDue === day && isOf(job, tech.value))
                    .map((job) => (
                      <WeekJob
                        key={job.id}
                        job={job}
                        techId={tech.value}
                        days={days}
                        techs={techs}
                        problem={problemOf(job)}
                        move={move}
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

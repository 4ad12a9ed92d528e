"use client";

import { TextLink } from "@/components/ui/button";
import type { Choice } from "@/components/ui/choice-fields";
import { dayText } from "@/lib/domain/date-text";
import { dayAfter } from "@/lib/domain/days";
import type { PlannedJob, PlanOf } from "./use-plans";

type Props = {
  readonly job: PlannedJob;
  /** The row it stands in; empty for nobody. */
  readonly techId: string;
  readonly days: readonly string[];
  readonly techs: readonly Choice[];
  /** Why its last move was taken back. */
  readonly problem: string | null;
  readonly move: (job: PlannedJob, plan: PlanOf, where: string) => void;
};

/** One startup in the week, moved by a list or by Alt and the arrows. */
export function WeekJob({ job, techId, days, techs, problem, move }: Props) {
  const plan: PlanOf = { techIds: job.techs.map((tech) => tech.userId), startupDue: job.startupDue };
  const toDay = (startupDue: string) => {
    move(job, { ...plan, startupDue }, `moved to ${dayText(startupDue)}`);
  };
  const toTech = (next: string) => {
    const others = plan.techIds.filter((id) => id !== techId && id !== next);
    move(
      job,
      { ...plan, techIds: next === "" ? others : [next, ...others] },
      `given to ${techs.find((one) => one.value === next)?.label ?? "nobody"}`,
    );
  };
  const onKey = (event: React.KeyboardEvent) => {
    if (!event.altKey || job.saving || job.startupDue === null) return;
    const order = ["", ...techs.map((one) => one.value)];
    const step = event.key === "ArrowRight" || event.key === "ArrowDown" ? 1 : -1;
    if (event.key === "ArrowLeft" || event.key === "ArrowRight") {
      event.preventDefault();
      toDay(dayAfter(job.startupDue, step));
    } else if (event.key === "ArrowUp" || event.key === "ArrowDown") {
      event.preventDefault();
      const next = order[order.indexOf(techId) + step];
      if (next !== undefined) toTech(next);
    }
  };
  return (
    <div className="mb-1.5 border border-rule-strong p-1.5 text-sm" aria-busy={job.saving || undefined}>
      <TextLink href={`/jobs/${job.id}`} onKeyDown={onKey} data-week-job={job.number}>
        {job.number} {job.customerName}
      </TextLink>
      <select
        aria-label={`Move job ${job.number}`}
        className="control mt-1 w-full px-1 text-xs"
        value=""
        disabled={job.saving}
        onChange={(event) => {
          const [kind, value = ""] = event.currentTarget.value.split(":");
          if (kind === "day") toDay(value);
          if (kind === "tech") toTech(value);
        }}
      >
        <option value="">Move to…</option>
        <optgroup label="Day">
          {[dayAfter(days[0] ?? "", -7), ...days, dayAfter(days[0] ?? "", 7)]
            .filter((day) => day !== job.startupDue)
            .map((day) => (
              <option key={day} value={`day:${day}`}>
                {dayText(day)}
              </option>
            ))}
        </optgroup>
        <optgroup label="Tech">
          {[{ value: "", label: "nobody yet" }, ...techs]
            .filter((one) => one.value !== techId)
            .map((one) => (
              <option key={one.value} value={`tech:${one.value}`}>
                {one.label}
              </option>
            ))}
        </optgroup>
      </select>
      {job.saving ? <span className="block text-xs text-muted">Saving…</span> : null}
      {problem === null ? null : (
        <p role="alert" className="text-short">
          Not moved. {problem}
        </p>
      )}
    </div>
  );
}

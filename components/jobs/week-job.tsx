"use client";

import { TextLink } from "@/components/ui/button";
import type { Choice } from "@/components/ui/choice-fields";
import { dayText } from "@/lib/domain/date-text";
import { dayAfter } from "@/lib/domain/days";
import type { JobSummary } from "@/lib/domain/jobs";
import { type Schedule, usePlan } from "./use-plan";

type Props = {
  readonly job: JobSummary;
  /** The row it stands in; empty for nobody. */
  readonly techId: string;
  readonly days: readonly string[];
  readonly techs: readonly Choice[];
  readonly schedule: Schedule;
  /** Told at once, before the server has answered. */
  readonly onMove: (job: number, where: string) => void;
};

/** One startup in the week, moved by a list or by Alt and the arrows. */
export function WeekJob({ job, techId, days, techs, schedule, onMove }: Props) {
  const { shown, save, busy, problem } = usePlan(job, schedule);
  const toDay = (startupDue: string) => {
    save({ ...shown, startupDue });
    onMove(job.number, `moved to ${dayText(startupDue)}`);
  };
  const toTech = (next: string) => {
    const others = shown.techIds.filter((id) => id !== techId && id !== next);
    save({ ...shown, techIds: next === "" ? others : [next, ...others] });
    onMove(job.number, `given to ${techs.find((one) => one.value === next)?.label ?? "nobody"}`);
  };
  const onKey = (event: React.KeyboardEvent) => {
    if (!event.altKey || busy || shown.startupDue === null) return;
    const order = ["", ...techs.map((one) => one.value)];
    const step = event.key === "ArrowRight" || event.key === "ArrowDown" ? 1 : -1;
    if (event.key === "ArrowLeft" || event.key === "ArrowRight") {
      event.preventDefault();
      toDay(dayAfter(shown.startupDue, step));
    } else if (event.key === "ArrowUp" || event.key === "ArrowDown") {
      event.preventDefault();
      const next = order[order.indexOf(techId) + step];
      if (next !== undefined) toTech(next);
    }
  };
  return (
    <div className="mb-1.5 border border-rule-strong p-1.5 text-sm" aria-busy={busy || undefined}>
      <TextLink href={`/jobs/${job.id}`} onKeyDown={onKey} data-week-job={job.number}>
        {job.number} {job.customerName}
      </TextLink>
      <select
        aria-label={`Move job ${job.number}`}
        className="control mt-1 w-full px-1 text-xs"
        value=""
        disabled={busy}
        onChange={(event) => {
          const [kind, value = ""] = event.currentTarget.value.split(":");
          if (kind === "day") toDay(value);
          if (kind === "tech") toTech(value);
        }}
      >
        <option value="">Move to…</option>
        <optgroup label="Day">
          {[dayAfter(days[0] ?? "", -7), ...days, dayAfter(days[0] ?? "", 7)]
            .filter((day) => day !== shown.startupDue)
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
      {busy ? <span className="block text-xs text-muted">Saving…</span> : null}
      {problem === null ? null : (
        <p role="alert" className="text-short">
          Not moved. {problem}
        </p>
      )}
    </div>
  );
}

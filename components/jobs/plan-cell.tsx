"use client";

import { useRef, useState } from "react";
import { Button } from "@/components/ui/button";
import type { Choice } from "@/components/ui/choice-fields";
import type { JobSummary } from "@/lib/domain/jobs";
import { type Schedule, usePlans } from "./use-plans";

export type { Schedule } from "./use-plans";

type Props = {
  readonly job: JobSummary;
  readonly techs: readonly Choice[];
  readonly schedule: Schedule;
};

/** Tech and startup date of a job, changed without leaving the table. */
export function PlanCell({ job, techs, schedule }: Props) {
  const [open, setOpen] = useState(false);
  const plans = usePlans([job], techs, schedule);
  const [shown = { ...job, saving: false }] = plans.shown;
  const problem = plans.problemOf(job);
  const change = useRef<HTMLButtonElement>(null);
  const close = () => {
    setOpen(false);
    // The field that held the focus is gone.
    requestAnimationFrame(() => change.current?.focus());
  };
  const names = shown.techs.map((tech) => tech.name).join(", ") || "nobody yet";
  if (!open)
    return (
      <>
        <button
          ref={change}
          type="button"
          data-plan=""
          className="text-link min-h-6 text-left"
          aria-label={`Change tech and date of job ${job.number}: ${names}, ${shown.startupDue ?? "no date"}`}
          onClick={() => setOpen(true)}
        >
          {names}
        </button>
        {shown.saving ? <span className="block text-xs text-muted">Saving {shown.startupDue}…</span> : null}
        {problem === null ? null : (
          <span role="alert" className="block text-sm text-short">
            Not changed. {problem}
          </span>
        )}
      </>
    );
  return (
    <form
      className="grid min-w-44 gap-1.5"
      onSubmit={(event) => {
        event.preventDefault();
        const form = new FormData(event.currentTarget);
        const first = String(form.get("tech"));
        // One choice replaces the first person; further people stay until changed on the job itself.
        const techIds = [
          ...new Set([first, ...shown.techs.slice(1).map((tech) => tech.userId)].filter((id) => id !== "")),
        ];
        plans.save(job, { techIds, startupDue: String(form.get("startup")) || null });
        close();
      }}
      onKeyDown={(event) => {
        if (event.key === "Escape") close();
      }}
    >
      <select
        name="tech"
        // biome-ignore lint/a11y/noAutofocus: opened by the person, who goes on in it
        autoFocus
        aria-label={`Tech of job ${job.number}`}
        className="control"
        defaultValue={shown.techs[0]?.userId ?? ""}
      >
        <option value="">nobody yet</option>
        {techs.map((one) => (
          <option key={one.value} value={one.value}>
            {one.label}
          </option>
        ))}
      </select>
      <input
        type="date"
        name="startup"
        aria-label={`Startup date of job ${job.number}`}
        className="control"
        defaultValue={shown.startupDue ?? ""}
      />
      <span className="flex gap-2">
        <Button type="submit" variant="primary">
          Save
        </Button>
        <Button variant="quiet" onClick={close}>
          Cancel
        </Button>
      </span>
    </form>
  );
}

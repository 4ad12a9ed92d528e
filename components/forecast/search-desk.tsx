"use client";

import Link from "next/link";
import { useState } from "react";
import type { OptionDeskView, OptionDoors } from "@/components/options/option-data";
import { Button } from "@/components/ui/button";
import { Card } from "@/components/ui/card";
import { Notice } from "@/components/ui/notice";
import { jobSetup, MOST_DEGREE_HOURS, missingOf, NO_CHANGES, optionSearch } from "@/lib/domain/forecast";
import { type OptionInputs, optionFromRecords } from "@/lib/domain/options";
import { MissingList } from "./missing-list";
import { FoundTable } from "./search-found";
import { SettingsThatMatter } from "./search-settings-that-matter";
import { useSearch } from "./use-search";

/** How many to find. */
const KEEP = 4;

type Props = { readonly view: OptionDeskView; readonly doors: Pick<OptionDoors, "add" | "save"> };

/** Looks for the settings that keep the promise at least effort, around one option or the records. */
export function SearchDesk({ view, doors }: Props) {
  const { context, options, weather, jobId } = view;
  const [startId, setStartId] = useState(view.choice?.optionId ?? options[0]?.id ?? "records");
  const [said, setSaid] = useState<string | null>(null);
  const option = options.find((one) => one.id === startId);
  const inputs: OptionInputs = option?.inputs ?? optionFromRecords(context.inputs);
  const model =
    option === undefined
      ? context.model
      : inputs.equipmentModelId === null
        ? null
        : (view.models[inputs.equipmentModelId] ?? null);
  const changed = context.forecast?.inputs.changed ?? NO_CHANGES;
  const job = jobSetup(context, changed.house);
  const search = optionSearch(context, inputs, model, changed.system);
  const { run, start, stop } = useSearch(`/api/jobs/${jobId}/weather?sha256=${weather?.sha256 ?? ""}`);
  const mostHours = Math.round((1 - context.limits["logs.dryShareMinPct"] / 100) * 8_760);

  if (!job.ready || !search.ready || weather === null || job.value.house.kind !== "load summary") {
    return (
      <Notice kind="information" title="No search yet. Still needed:">
        {weather === null ? <p>The job’s weather year.</p> : null}
        <MissingList jobId={jobId} missing={missingOf([job, search])} />
      </Notice>
    );
  }
  const { house, humidityLimitPct } = job.value;
  const { space, fieldsOf, byHand } = search.value;
  const make = async (label: string, fields: Partial<OptionInputs>) => {
    const added = await doors.add({ jobId, label, copyOf: option?.id ?? null });
    if (!added.ok) return setSaid(added.message);
    const whole = { ...inputs, ...fields };
    const saved = await doors.save({
      jobId,
      optionId: added.value,
      expectedVersion: 1,
      label,
      inputs: whole,
    });
    setSaid(saved.ok ? `“${label}” is an option now.` : saved.message);
  };
  return (
    <Card title="Settings that keep the promise">
      <div className="grid min-w-0 grid-cols-[minmax(0,1fr)] gap-6">
        <div className="flex flex-wrap items-end gap-4">
          <label className="grid gap-1 text-sm">
            <span className="font-semibold">Start from</span>
            <select
              className="input"
              value={startId}
              onChange={(event) => setStartId(event.target.value as typeof startId)}
            >
              <option value="records">What the records say</option>
              {options.map(({ id, label }) => (
                <option key={id} value={id}>
                  {label}
                </option>
              ))}
            </select>
          </label>
          {run.phase === "running" ? (
            <Button onClick={stop}>Stop</Button>
          ) : (
            <Button
              variant="primary"
              onClick={() =>
                void start({
                  house,
                  humidityLimitPct,
                  space,
                  keep: KEEP,
                  mostHoursAboveLimit: mostHours,
                  mostAboveSetpointDegreeHours: MOST_DEGREE_HOURS,
                })
              }
            >
              Search
            </Button>
          )}
          <p className="text-sm" data-testid="search-phase" data-phase={run.phase}>
            {run.progress === null
              ? run.phase === "running"
                ? "Starting…"
                : ""
              : `${run.progress.tried} of ${run.progress.of} combinations tried${run.phase === "done" ? "; what is left takes more effort" : ""}.`}
          </p>
        </div>
        <p className="text-sm text-muted">
          The promise: at most {mostHours} of 8,760 hours above {humidityLimitPct} %, and at most{" "}
          {MOST_DEGREE_HOURS} degree-hours (°F·h) warmer than the start of cooling, with the house as assumed.
          Effort counts what it takes: 1 for each setting changed, 5 for another control, 20 and more for a
          dehumidifier (common practice, no source). The same equipment throughout.
        </p>
        {run.problem === null ? null : <Notice kind="problem" title={run.problem} />}
        {said === null ? null : (
          <Notice kind="information" title={said}>
            <Link className="text-link" href={`/jobs/${jobId}/options`}>
              See the options
            </Link>
          </Notice>
        )}
        {run.progress === null ? null : (
          <FoundTable
            progress={run.progress}
            running={run.phase === "running"}
            limitPct={humidityLimitPct}
            byHand={byHand}
            make={view.mayEdit ? (found) => void make(labelOf(found.names), fieldsOf(found)) : null}
          />
        )}
        <SettingsThatMatter settings={run.settings} limitPct={humidityLimitPct} />
      </div>
    </Card>
  );
}

/** What differs from "as set", short enough for a name. */
function labelOf(names: Readonly<Record<string, string>>): string {
  const { capacity, airflow, dehumidifier } = names;
  const dryer = dehumidifier === "none" ? "" : `, ${dehumidifier}`;
  return `${capacity}, airflow ${airflow}${dryer}`.slice(0, 80);
}

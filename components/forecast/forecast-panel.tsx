"use client";

import { useState } from "react";
import type { OptionDeskView } from "@/components/options/option-data";
import { Button, TextLink } from "@/components/ui/button";
import { Card } from "@/components/ui/card";
import { Notice } from "@/components/ui/notice";
import { type ForecastPromise, forecastAdvice } from "@/lib/domain/forecast";
import { AssumptionList } from "./assumption-list";
import { ForecastPictures } from "./forecast-pictures";
import { ForecastStatus } from "./forecast-status";
import { type KeepDoor, KeptNotice } from "./kept-notice";
import { MissingList } from "./missing-list";
import { shownAssumptions, withChange } from "./shown-assumptions";
import type { OptionsForecast } from "./use-options-forecast";

type Props = {
  readonly view: OptionDeskView;
  readonly forecast: OptionsForecast;
  readonly keep: KeepDoor;
};

/** The forecast of a job's options: where it stands, what it advises, what would have to be true, and its pictures. */
export function ForecastPanel({ view, forecast, keep }: Props) {
  const { run, missing, changes, setChanges } = forecast;
  const limitPct = view.context.inputs.load_summary.humidityLimitPct;
  const needs = view.weather === null || missing.length > 0 || limitPct === null;
  const assumptions = shownAssumptions(forecast);
  const set = (one: Parameters<typeof withChange>[1], value: number | null) =>
    setChanges(withChange(changes, one, value));
  const isChanged = Object.keys(changes.house).length + Object.keys(changes.system).length > 0;
  return (
    <Card
      title="A year in this house"
      aside={
        <span className="flex flex-wrap gap-x-4">
          <TextLink href={`/jobs/${view.jobId}/options/search`}>Search settings</TextLink>
          <TextLink href="/forecast-model">How it is computed, and what it is not</TextLink>
        </span>
      }
    >
      {needs ? (
        <Notice kind="information" title="No forecast yet. Still needed:">
          {view.weather === null ? (
            <p>
              The job’s weather year:{" "}
              <TextLink href={`/jobs/${view.jobId}`}>choose one in the job’s plan</TextLink>.
            </p>
          ) : null}
          <MissingList jobId={view.jobId} missing={missing} />
        </Notice>
      ) : (
        <div className="grid gap-6">
          <ForecastStatus forecast={forecast} weatherName={view.weather?.name ?? ""} />
          {run.problem === null ? null : (
            <Notice kind="problem" title="The forecast could not be run">
              <p>{run.problem}</p>
            </Notice>
          )}
          {run.forecast === null ? null : (
            <Advice
              run={run}
              promise={{
                humidityLimitPct: limitPct,
                dryShareMinPct: view.context.limits["logs.dryShareMinPct"],
              }}
            />
          )}
          <KeptNotice view={view} changes={changes} keep={keep} />
          {assumptions.first.length === 0 ? null : (
            <section aria-labelledby="true-heading">
              <div className="mb-3 flex flex-wrap items-center justify-between gap-2">
                <h3 id="true-heading" className="font-semibold">
                  What would have to be true
                </h3>
                {isChanged ? (
                  <Button onClick={() => setChanges({ house: {}, system: {} })}>All back as assumed</Button>
                ) : null}
              </div>
              <p className="mb-3 text-sm text-muted">
                The load summary does not say these. Move one and the forecast follows; what is set counts as
                known.
              </p>
              <AssumptionList assumptions={assumptions.first} set={set} />
              <details className="mt-4">
                <summary className="cursor-pointer text-accent">
                  {assumptions.others.length} more assumptions
                </summary>
                <div className="mt-3">
                  <AssumptionList assumptions={assumptions.others} set={set} />
                </div>
              </details>
            </section>
          )}
          <Pictures forecast={forecast} limitPct={limitPct} />
        </div>
      )}
    </Card>
  );
}

function Advice({
  run,
  promise,
}: {
  readonly run: OptionsForecast["run"];
  readonly promise: ForecastPromise;
}) {
  if (run.forecast === null) return null;
  const { advice, reasons } = forecastAdvice(run.forecast, promise);
  return (
    <section aria-label="Advice" className="border-l-4 border-accent pl-4">
      <p className="font-semibold">{advice}</p>
      <ul className="mt-1 grid list-disc gap-1 pl-4 text-sm">
        {reasons.map((reason) => (
          <li key={reason}>{reason}</li>
        ))}
      </ul>
    </section>
  );
}

function Pictures({
  forecast: { ready, found },
  limitPct,
}: {
  readonly forecast: OptionsForecast;
  readonly limitPct: number;
}) {
  const [picked, setPicked] = useState<string | null>(null);
  const drawn = ready.filter(({ id }) => found.has(id));
  const one = drawn.find(({ id }) => id === picked) ?? drawn[0];
  const option = one === undefined ? undefined : found.get(one.id);
  if (one === undefined || option === undefined) return null;
  return (
    <section aria-labelledby="pictures-heading" className="grid gap-3">
      <h3 id="pictures-heading" className="font-semibold">
        A hot day, a mild wet week and the year
      </h3>
      {drawn.length < 2 ? null : (
        <label className="flex flex-wrap items-center gap-2 text-sm">
          <span>Option</span>
          <select
            aria-label="Option drawn"
            className="input w-auto"
            value={one.id}
            onChange={(event) => setPicked(event.target.value)}
          >
            {drawn.map(({ id, setup }) => (
              <option key={id} value={id}>
                {setup.option.name}
              </option>
            ))}
          </select>
        </label>
      )}
      <ForecastPictures
        option={option}
        limitPct={limitPct}
        setpointF={one.setup.option.controls.coolingSetpointF}
      />
    </section>
  );
}

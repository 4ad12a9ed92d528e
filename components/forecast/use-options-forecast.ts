"use client";

import { useDeferredValue, useState } from "react";
import type { OptionDeskView, ShownOption } from "@/components/options/option-data";
import {
  FORECAST_MEMBERS,
  FORECAST_SEED,
  type ForecastChanges,
  type ForecastMissing,
  jobSetup,
  missingOf,
  NO_CHANGES,
  namedApart,
  type OptionSetup,
  optionSetup,
} from "@/lib/domain/forecast";
import type { OptionForecast } from "@/lib/engineering/simulation";
import { type ForecastRun, useForecast } from "./use-forecast";

/** The forecast beside a table of options. */
export type OptionsForecast = {
  readonly run: ForecastRun;
  /** What the job itself lacks: then no option can be forecast. */
  readonly missing: readonly ForecastMissing[];
  /** By an option's id: what it lacks, or why its year cannot be run. */
  readonly lacking: ReadonlyMap<string, readonly ForecastMissing[]>;
  readonly refused: ReadonlyMap<string, string>;
  readonly found: ReadonlyMap<string, OptionForecast>;
  readonly ready: readonly { readonly id: string; readonly setup: OptionSetup }[];
  readonly changes: ForecastChanges;
  readonly setChanges: (changes: ForecastChanges) => void;
  readonly stop: () => void;
  readonly again: () => void;
};

/** Forecasts every option that has all it needs, again whenever one of them or an assumption changes. */
export function useOptionsForecast(view: OptionDeskView, shown: readonly ShownOption[]): OptionsForecast {
  const [changes, setChanges] = useState<ForecastChanges>(
    view.context.forecast?.inputs.changed ?? NO_CHANGES,
  );
  const settled = useDeferredValue(changes);
  const job = jobSetup(view.context, settled.house);
  const names = namedApart(shown.map((one) => one.option.label));
  const setups = shown.map((one, place) => ({
    id: one.option.id as string,
    part: optionSetup(one.context, names[place] ?? "", settled.system),
  }));
  const ready = setups.flatMap(({ id, part }) => (part.ready ? [{ id, setup: part.value }] : []));
  const { run, stop, again } = useForecast(
    !job.ready || view.weather === null || ready.length === 0
      ? null
      : {
          jobId: view.jobId,
          weatherSha256: view.weather.sha256,
          changed: settled,
          order: {
            ...job.value,
            options: ready.map(({ setup }) => setup.option),
            members: FORECAST_MEMBERS,
            seed: FORECAST_SEED,
          },
        },
  );
  return {
    run,
    missing: missingOf([job]),
    lacking: new Map(setups.flatMap(({ id, part }) => (part.ready ? [] : [[id, part.missing] as const]))),
    refused: new Map(
      ready.flatMap(({ id }, place) => {
        const why = run.refused[place];
        return why === undefined ? [] : [[id, why] as const];
      }),
    ),
    found: new Map(
      ready.flatMap(({ id, setup }) => {
        const one = run.forecast?.options.find((option) => option?.name === setup.option.name);
        return one ? [[id, one] as const] : [];
      }),
    ),
    ready,
    changes,
    setChanges,
    stop,
    again,
  };
}

import type { JobContext } from "./evaluate/context";
import type { PlainValue } from "./merge-fields";
import type { StartupKey } from "./startup-walk";

type Values = Readonly<Record<string, PlainValue>>;

export type Drop = { readonly what: string; readonly inWc: number; readonly plannedInWc: number | null };

/** What filter and coil take of the static pressure at one stage, where both sides were read, in. w.c. */
export function dropsOf(stage: "first" | "second", values: Values, context: JobContext): readonly Drop[] {
  const planned = context.inputs.airflow_setup;
  const parts = [
    { what: "The filter", part: "Filter", plannedInWc: planned.filterDropInWc },
    { what: "The coil", part: "Coil", plannedInWc: planned.coilDropInWc },
  ];
  return parts.flatMap(({ what, part, plannedInWc }) => {
    const before = values[`${stage}Before${part}InWc`];
    const after = values[`${stage}After${part}InWc`];
    if (typeof before !== "number" || typeof after !== "number") return [];
    return [{ what, inWc: Math.abs(after - before), plannedInWc }];
  });
}

export type Correction = {
  readonly key: StartupKey;
  readonly unit: string;
  /** Trusted minus shown. */
  readonly difference: number;
  /** The correction to leave; `null` when the one in force is not known. */
  readonly next: number | null;
};

/**
 * The thermostat against the trusted instrument. What it shows includes the correction it has, so the new one is
 * the old one plus the difference. `null` until both are read.
 */
export function correctionFor(
  what: "temperature" | "humidity",
  values: Values,
  context: JobContext,
): Correction | null {
  const isHumidity = what === "humidity";
  const shown = values[isHumidity ? "thermostatReadsRhPct" : "thermostatReadsF"];
  const trusted = values[isHumidity ? "trustedReadsRhPct" : "trustedReadsF"];
  if (typeof shown !== "number" || typeof trusted !== "number") return null;
  const controls = context.inputs.control_setup;
  const now = isHumidity ? controls.indoorHumidityCorrectionPct : controls.indoorTemperatureCorrectionF;
  const difference = tenths(trusted - shown);
  return {
    key: isHumidity ? "leftHumidityCorrectionPct" : "leftTemperatureCorrectionF",
    unit: isHumidity ? "%" : "°F",
    difference,
    next: now === null ? null : tenths(now + difference),
  };
}

/** Controls take tenths at the finest. */
function tenths(value: number): number {
  return Math.round(value * 10) / 10;
}

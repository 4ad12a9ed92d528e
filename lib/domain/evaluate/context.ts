import type { LogAnalysis, LogContext } from "@/lib/engineering/logs";
import type { EquipmentModel, Instrument } from "../catalog";
import type { ForecastInForce } from "../forecast/kept";
import type { LivedInForce } from "../forecast-lived/kept";
import type { Limits } from "../limits";
import type { StageInputs } from "../stages";

/** Design values taken from the job's weather file; `null` when the job has none. */
export type WeatherDesign = {
  readonly name: string;
  readonly coolingDbF: number;
  readonly coolingWbF: number;
  readonly wetDewPointF: number;
  readonly wetDbF: number;
  readonly heatingDbF: number;
};

/** What a log says, as far as ledger and findings need it. Made by the log analysis, kept with the import. */
export type LogSummary = {
  readonly importId: string;
  readonly sourceName: string;
  readonly firstAt: string;
  readonly lastAt: string;
  readonly loggedHours: number;
  readonly limitPct: number;
  readonly dryHours: number;
  readonly hoursAboveLimit: number;
  readonly share50To60Pct: number;
  readonly meanRhPct: number;
  /** `null` when the log has no indoor temperature. */
  readonly meanDewPointF: number | null;
  readonly longestWetSpellHours: number;
  readonly cyclesPerHour: number | null;
  readonly medianRunMin: number | null;
  readonly secondStageSharePct: number | null;
  /** Where outdoor readings come from; a typical year is not those days' weather and judges nothing. */
  readonly outdoorFrom: OutdoorSource;
  /** What `analyzeLog` says, without the days of the load line. `null` in an import not read again since it is kept. */
  readonly analysis: LogAnalysis | null;
  /** What the analysis was asked with; read again when the job now asks otherwise. */
  readonly askedWith: LogContext | null;
  /** Which analysis this is; absent in the first. A kept one that is not `LOG_ANALYSIS` is made again when it is read. */
  readonly madeBy?: number;
};

/** Raised when what `analyzeLog` answers changes its shape or meaning. 2: design load by the peak hour. */
export const LOG_ANALYSIS = 3;

export type OutdoorSource = "log" | "station file" | "typical year" | "none";

/** Everything a job's findings follow from. Plain data, so that phone, screen and server compute the same. */
export type JobContext = {
  readonly elevationFt: number | null;
  readonly inputs: StageInputs;
  readonly model: EquipmentModel | null;
  readonly controlStages: 1 | 2 | null;
  readonly instruments: readonly Instrument[];
  readonly limits: Limits;
  readonly weather: WeatherDesign | null;
  readonly log: LogSummary | null;
  /** What the design was forecast to give; `null` when none is kept, and on a phone. */
  readonly forecast: ForecastInForce | null;
  /** The forecast held against the log chosen; `null` before, and on a phone. */
  readonly lived: LivedInForce | null;
  /** ISO day of the startup readings, for calibration dates; `null` before they were taken. */
  readonly measuredOn: string | null;
};

/**
 * A derived quantity: known, not yet known because fields are empty, or not possible and why.
 * Nothing is defaulted: what depends on an unknown is unknown too.
 */
export type Derived<T> =
  | { readonly known: true; readonly value: T }
  | { readonly known: false; readonly missing: readonly string[]; readonly problem: string | null };

export function known<T>(value: T): Derived<T> {
  return { known: true, value };
}

export function unknown(missing: readonly string[], problem: string | null = null): Derived<never> {
  return { known: false, missing, problem };
}

export function valueIfKnown<T>(derived: Derived<T>): T | null {
  return derived.known ? derived.value : null;
}

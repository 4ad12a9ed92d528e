import type { ForecastRange } from "@/lib/engineering/simulation";
import type { LogFit } from "./fit-to-log";

/** What is compared, over some hours. */
export type SpanFigures<T> = {
  readonly hoursAboveLimit: T;
  readonly meanRhPct: T;
  /** Hours the compressor ran; `null` where the log does not say. */
  readonly runHours: T | null;
};

export type LivedMonth = {
  /** "2026-08" */
  readonly month: string;
  readonly hours: number;
  readonly lived: number;
  readonly forecast: ForecastRange;
  readonly fitted: ForecastRange | null;
};

/** What the hours above the limit would have been with one assumption put otherwise. */
export type AssumptionTried = {
  readonly name: string;
  readonly unit: string;
  readonly low: number;
  readonly value: number;
  readonly high: number;
  readonly hoursAtLow: number;
  readonly hoursAtHigh: number;
};

/** Indoor dew points by the hour, to be drawn. */
export type FitPicture = {
  readonly firstMs: number;
  /** `null` in a gap. */
  readonly measuredF: readonly (number | null)[];
  readonly assumedF: readonly (number | null)[];
  readonly fittedF: readonly (number | null)[];
};

/** Raised when the same inputs would give other numbers; another one makes what was kept outdated. */
export const HOLD_VERSION = "3";

/** What ledger, findings and packets read of it. */
export type LivedSummary = Omit<ForecastLived, "picture">;

/** The same with whether records, weather or engine are others now. */
export type LivedInForce = LivedSummary & {
  readonly heldAt: string;
  readonly heldByName: string;
  readonly outdated: boolean;
};

/** A forecast held against a log, and the house fitted to it: plain data, kept with the job. */
export type ForecastLived = {
  readonly importId: string;
  readonly humidityLimitPct: number;
  /** The log's own outdoors, or the weather file's typical year because the log has none. */
  readonly weather: "the log's own" | "typical year";
  readonly weatherName: string;
  readonly firstAt: string;
  readonly lastAt: string;
  /** Hours compared: those in which the log tells enough. */
  readonly hours: number;
  readonly members: number;
  readonly lived: SpanFigures<number>;
  readonly forecast: SpanFigures<ForecastRange>;
  readonly fitted: SpanFigures<ForecastRange> | null;
  readonly months: readonly LivedMonth[];
  readonly assumptions: readonly AssumptionTried[];
  /** The whole year above the limit, as assumed and fitted; `null` without a fit. */
  readonly year: { readonly assumed: ForecastRange; readonly fitted: ForecastRange } | null;
  readonly fit: LogFit | null;
  /** What the fit assumed or left out; without a fit, why there is none. */
  readonly fitNotes: readonly string[];
  readonly picture: FitPicture | null;
};

export type HumidityReading = {
  /** Milliseconds since 1970 UTC. Readings come in order of time. */
  readonly atMs: number;
  readonly relativeHumidityPercent: number | null;
  readonly dewPointF?: number | null;
};

export type HumidityChartInput = {
  readonly readings: readonly HumidityReading[];
  /** The band the house is to stay in; above `highPercent` is shaded. */
  readonly band: { readonly lowPercent: number; readonly highPercent: number };
  /** More minutes than this between readings is a gap. */
  readonly gapAfterMinutes: number;
  /** The house's IANA time zone. */
  readonly timeZone: string;
  readonly width: number;
  /** Drawn lower, for paper. */
  readonly isLow?: boolean;
};

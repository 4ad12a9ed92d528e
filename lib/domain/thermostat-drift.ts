/** A thermostat whose correction was set more than once, the first time and the last. */
export type ThermostatDrift = {
  readonly jobId: string;
  readonly jobNumber: number;
  readonly customerName: string;
  /** Signed records that set its correction. */
  readonly checks: number;
  /** ISO days. */
  readonly firstOn: string;
  readonly lastOn: string;
  /** Last correction less the first; `null` where one of them is not recorded. */
  readonly changeF: number | null;
  readonly changeRhPct: number | null;
};

/**
 * From which change on a thermostat's own sensor is said to have drifted, and how far apart the first and the last setting must
 * lie: what a tech leaves otherwise than designed on the same visit is no drift. Common practice, no source.
 */
export const THERMOSTAT_DRIFT = { leastF: 1, leastRhPct: 3, leastDays: 30 } as const;

/** What moved, in a sentence. */
export function driftSentence({ changeF, changeRhPct }: ThermostatDrift): string {
  const moved = (change: number | null, least: number, unit: string, decimals: number) =>
    change === null || Math.abs(change) < least
      ? []
      : [`${change < 0 ? "−" : "+"}${Math.abs(change).toFixed(decimals)} ${unit}`];
  const parts = [
    ...moved(changeF, THERMOSTAT_DRIFT.leastF, "°F", 1),
    ...moved(changeRhPct, THERMOSTAT_DRIFT.leastRhPct, "% RH", 0),
  ];
  return `Its correction had to move by ${parts.join(" and ")}: check where it hangs, then replace it rather than correct it again.`;
}

import { linearRegression, median } from "simple-statistics";
import type { Instrument } from "./catalog";
import { chanceOfAsMany } from "./shares";

/** A thermostat checked with an instrument: what the instrument showed less what the thermostat showed. */
export type Correction = {
  readonly instrumentId: string;
  /** ISO day. */
  readonly on: string;
  readonly temperatureF: number | null;
  readonly humidityPct: number | null;
};

export type InstrumentUse = {
  readonly instrumentId: string;
  /** Signed startups measured with it. */
  readonly startups: number;
  /** Those of them on which two independent ways of measuring disagree. */
  readonly odd: number;
};

export type Drift = {
  readonly checks: number;
  readonly median: number;
  /** Change over the time of the checks, with its 95 % interval; `null` with too few checks. */
  readonly change: { readonly over: number; readonly low: number; readonly high: number } | null;
};

export type InstrumentReport = {
  readonly instrument: Instrument;
  readonly calibration: "in date" | "overdue" | "not recorded";
  readonly startups: number;
  readonly odd: number;
  /** How likely chance gave it as many odd readings, times the number of instruments looked at. */
  readonly chance: number | null;
  readonly temperature: Drift | null;
  readonly humidity: Drift | null;
  /** What to do about it, in sentences; empty when nothing is known against it. */
  readonly words: readonly string[];
};

/** Fewer checks draw no line through time. Common practice, no source. */
const LEAST_CHECKS = 6;
/** A change smaller than this is no drift worth a calibration, whatever its interval. Common practice, no source. */
const DRIFT_F = 1;
const DRIFT_RH_PCT = 3;
const UNLIKELY = 0.05;
const MS_PER_DAY = 86_400_000;
/** Two-sided 95 % points of Student's t for 4 to 12 degrees of freedom; printed in any table (from memory). */
const T95 = [2.776, 2.571, 2.447, 2.365, 2.306, 2.262, 2.228, 2.201, 2.179];

/** What is known against each instrument: its calibration, its corrections over time, and odd readings. */
export function instrumentReport(
  instruments: readonly Instrument[],
  use: readonly InstrumentUse[],
  corrections: readonly Correction[],
  today: string,
): readonly InstrumentReport[] {
  const all = use.reduce((sum, one) => ({ startups: sum.startups + one.startups, odd: sum.odd + one.odd }), {
    startups: 0,
    odd: 0,
  });
  return instruments.map((instrument) => {
    const { startups, odd } = use.find((one) => one.instrumentId === instrument.id) ?? {
      startups: 0,
      odd: 0,
    };
    const own = corrections.filter((one) => one.instrumentId === instrument.id);
    const temperature = drift(own.map(({ on, temperatureF }) => [on, temperatureF]));
    const humidity = drift(own.map(({ on, humidityPct }) => [on, humidityPct]));
    const chance =
      odd === 0
        ? null
        : Math.min(1, use.length * chanceOfAsMany([odd, startups], [all.odd - odd, all.startups - startups]));
    const calibration = calibrationOf(instrument, today);
    return {
      instrument,
      calibration,
      startups,
      odd,
      chance,
      temperature,
      humidity,
      words: [
        ...(calibration === "overdue"
          ? [`Calibration was due on ${instrument.calibrationDueOn}. Readings since then carry a doubt.`]
          : []),
        ...(calibration === "not recorded" ? ["No calibration is recorded."] : []),
        ...driftWords("temperature", temperature, DRIFT_F, "°F"),
        ...driftWords("humidity", humidity, DRIFT_RH_PCT, "% RH"),
        ...(chance !== null && chance < UNLIKELY
          ? [
              `${odd} of ${startups} startups measured with it disagree with themselves, more than chance gives one instrument: check it before the next job.`,
            ]
          : []),
      ],
    };
  });
}

function calibrationOf({ calibrationDueOn }: Instrument, today: string): InstrumentReport["calibration"] {
  if (calibrationDueOn === null) return "not recorded";
  return calibrationDueOn < today ? "overdue" : "in date";
}

/** A straight line through the corrections over time, with the interval of its slope. */
function drift(dated: readonly (readonly [on: string, value: number | null])[]): Drift | null {
  const points = dated
    .flatMap(([on, value]) => (value === null ? [] : [[Date.parse(on) / MS_PER_DAY, value] as const]))
    .toSorted((one, other) => one[0] - other[0]);
  const [first, last] = [points[0], points.at(-1)];
  if (!first || !last) return null;
  const common = { checks: points.length, median: median(points.map(([, value]) => value)) };
  const days = last[0] - first[0];
  if (points.length < LEAST_CHECKS || days === 0) return { ...common, change: null };
  const line = linearRegression(points.map(([day, value]) => [day - first[0], value]));
  const middle = points.reduce((sum, [day]) => sum + day, 0) / points.length;
  const spread = points.reduce((sum, [day]) => sum + (day - middle) ** 2, 0);
  const misses = points.reduce(
    (sum, [day, value]) => sum + (value - line.b - line.m * (day - first[0])) ** 2,
    0,
  );
  const freedom = points.length - 2;
  // Beyond the table the last point serves: slightly too wide, never too narrow.
  const t = T95[Math.min(freedom - 4, T95.length - 1)] ?? 2.776;
  const half = t * Math.sqrt(misses / freedom / spread) * days;
  const over = line.m * days;
  return { ...common, change: { over, low: over - half, high: over + half } };
}

function driftWords(name: string, found: Drift | null, least: number, unit: string): readonly string[] {
  if (!found?.change) return [];
  const { over, low, high } = found.change;
  if (Math.abs(over) < least || (low <= 0 && high >= 0)) return [];
  return [
    `Its ${name} corrections moved by ${over.toFixed(1)} ${unit} over ${found.checks} thermostats (${low.toFixed(1)} to ${high.toFixed(1)}): the instrument, not the thermostats, has drifted.`,
  ];
}

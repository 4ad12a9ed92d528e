import type { LogSamples } from "@/lib/engineering/logs";
import type { ForecastRange, YearInput } from "@/lib/engineering/simulation";
import { type HouseSpan, simulateSpan } from "@/lib/engineering/simulation/simulate-span";
import type { LivedMonth, SpanFigures } from "./kept";
import { livedHours } from "./lived-hours";

const HOUR_MS = 3_600_000;

type Asked = {
  readonly samples: LogSamples;
  readonly elevationFt: number;
  readonly humidityLimitPct: number;
  readonly weather: { readonly place: { readonly timeZoneH: number } };
};
type Span = {
  readonly firstHour: number;
  readonly firstMs: number;
  readonly hours: number;
  /** 1 where the outdoors are the log's own; `null`: every hour counts. */
  readonly own: Uint8Array | null;
};

/** Years' worth of one span, gathered into ranges; the first added is the central one. */
export type Gathering = {
  readonly add: (input: YearInput) => void;
  readonly figures: () => SpanFigures<ForecastRange>;
  readonly hoursAboveIn: (counts: (hour: number) => boolean) => ForecastRange;
};

/** Compares simulated hours with the lived ones, hour against hour: only those in which the log tells enough. */
export function comparer({ samples, elevationFt, humidityLimitPct, weather }: Asked, span: Span) {
  const { firstHour, firstMs, hours } = span;
  const lived = livedHours(samples, elevationFt, humidityLimitPct, firstMs, hours);
  const counted = Array.from({ length: hours }, (_, hour) => hour).filter(
    (hour) => !Number.isNaN(lived.wetMinutes[hour]) && (span.own === null || span.own[hour] === 1),
  );
  const running = counted.filter((hour) => Number.isFinite(lived.runMinutes?.[hour] ?? Number.NaN));
  const sum = (column: Float64Array | null, places: readonly number[]): number =>
    places.reduce((total, hour) => total + (column?.[hour] ?? 0), 0);
  const figuresOf = (span: Omit<HouseSpan, "roomF" | "runMinutes">, runMinutes: Float64Array | null) => ({
    hoursAboveLimit: sum(span.wetMinutes, counted) / 60,
    meanRhPct: sum(span.rhPct, counted) / Math.max(1, counted.length),
    runHours: running.length === 0 ? null : sum(runMinutes, running) / 60,
  });
  const gathering = (): Gathering => {
    const spans: HouseSpan[] = [];
    const rangeOf = (figure: (one: HouseSpan) => number) => range(spans.map(figure));
    return {
      add: (input) => spans.push(simulateSpan(input, firstHour, hours)),
      figures: () => ({
        hoursAboveLimit: rangeOf((one) => sum(one.wetMinutes, counted) / 60),
        meanRhPct: rangeOf((one) => sum(one.rhPct, counted) / Math.max(1, counted.length)),
        runHours: running.length === 0 ? null : rangeOf((one) => sum(one.runMinutes, running) / 60),
      }),
      hoursAboveIn: (counts) =>
        rangeOf(
          (one) =>
            sum(
              one.wetMinutes,
              counted.filter((hour) => counts(hour)),
            ) / 60,
        ),
    };
  };
  const monthOf = (hour: number) =>
    new Date(firstMs + (hour + weather.place.timeZoneH) * HOUR_MS).toISOString().slice(0, 7);
  return {
    /** Hours compared. */
    hours: counted.length,
    lived: figuresOf(lived, lived.runMinutes),
    gathering,
    hoursAbove: (input: YearInput): number =>
      sum(simulateSpan(input, firstHour, hours).wetMinutes, counted) / 60,
    months: (forecast: Gathering, fitted: Gathering | null): readonly LivedMonth[] =>
      [...new Set(counted.map(monthOf))].map((month) => {
        const within = (hour: number) => monthOf(hour) === month;
        const places = counted.filter(within);
        return {
          month,
          hours: places.length,
          lived: sum(lived.wetMinutes, places) / 60,
          forecast: forecast.hoursAboveIn(within),
          fitted: fitted?.hoursAboveIn(within) ?? null,
        };
      }),
  };
}

function range(values: readonly number[]): ForecastRange {
  return { central: values[0] ?? Number.NaN, low: Math.min(...values), high: Math.max(...values) };
}

import { scaleLinear } from "d3-scale";
import { axisOver, yTicks } from "./axes";
import { type ChartGeometry, label, type Plot } from "./geometry";
import { drawSegments, type Point, segments, thinToPixels } from "./segments";
import { clockText, timeTicks } from "./time-ticks";

export type FitChartInput = {
  readonly width: number;
  readonly timeZone: string;
  readonly firstMs: number;
  /** One value an hour; `null` in a gap. */
  readonly measuredF: readonly (number | null)[];
  readonly assumedF: readonly (number | null)[];
  readonly fittedF: readonly (number | null)[];
};

const HOUR_MS = 3_600_000;
const SERIES = [
  { key: "assumedF", name: "as assumed", tone: "b", dashes: "dashed" },
  { key: "fittedF", name: "fitted", tone: "a", dashes: "solid" },
  { key: "measuredF", name: "measured", tone: "ink", dashes: "dotted" },
] as const;

/** The rooms' measured dew point beside that of the house as assumed and as fitted. `null` without any reading. */
export function fitChart(input: FitChartInput): ChartGeometry | null {
  const { width, firstMs } = input;
  const values = SERIES.flatMap(({ key }) => input[key].filter((one) => one !== null));
  const hours = input.measuredF.length;
  if (values.length === 0 || hours < 2) return null;
  const plot: Plot = { left: 44, top: 44, right: width - 14, bottom: 264 };
  const x = scaleLinear()
    .domain([firstMs, firstMs + hours * HOUR_MS])
    .range([plot.left, plot.right]);
  const y = axisOver(values, [plot.bottom, plot.top], 6);
  const at = ([ms, f]: Point): Point => [x(ms), y.at(f)];
  const drawn = SERIES.map(({ key, tone, dashes }) =>
    drawSegments(
      segments(
        input[key].map((value, hour) => [firstMs + hour * HOUR_MS, value] as const),
        1.5 * HOUR_MS,
      ).map((stretch) => thinToPixels(stretch, x)),
      at,
      { key, tone, dashes, weight: key === "measuredF" ? 2 : 1.5 },
    ),
  );
  const off = (key: "assumedF" | "fittedF") => meanDistance(input.measuredF, input[key]);
  const days = dailyMeans(input);
  return {
    width,
    height: plot.bottom + 26,
    paths: drawn.flatMap(({ paths }) => paths),
    marks: drawn.flatMap(({ marks }) => marks),
    ticks: [
      ...yTicks(y, plot),
      ...timeTicks(
        firstMs,
        firstMs + hours * HOUR_MS,
        input.timeZone,
        Math.max(2, Math.floor(width / 80)),
      ).map(({ atMs, text }) => ({
        axis: "x" as const,
        at: x(atMs),
        text,
        guide: [x(atMs), plot.top, x(atMs), plot.bottom] as const,
      })),
    ],
    labels: [
      label("y", 4, 14, "Indoor dew point, °F"),
      label("key", 4, 32, "measured dotted, as assumed dashed, fitted solid"),
    ],
    textAlternative: `The dew point of the house as assumed is off by ${off("assumedF")} °F in the mean, that of the fitted house by ${off("fittedF")} °F.`,
    tableHead: ["Day", "Measured, °F", "As assumed, °F", "Fitted, °F"],
    tableRows: days.map(({ day, ...means }) => [
      day,
      ...[means.measuredF, means.assumedF, means.fittedF].map((one) => one?.toFixed(1) ?? "–"),
    ]),
  };
}

function meanDistance(a: readonly (number | null)[], b: readonly (number | null)[]): string {
  const apart = a.flatMap((one, hour) => {
    const other = b[hour] ?? null;
    return one === null || other === null ? [] : [Math.abs(one - other)];
  });
  return apart.length === 0 ? "–" : (apart.reduce((sum, one) => sum + one, 0) / apart.length).toFixed(1);
}

function dailyMeans(input: FitChartInput) {
  const days = new Map<string, number[]>();
  for (let hour = 0; hour < input.measuredF.length; hour++) {
    const day = clockText(input.firstMs + hour * HOUR_MS, input.timeZone, "d LLL yyyy");
    days.set(day, [...(days.get(day) ?? []), hour]);
  }
  return [...days].map(([day, hours]) => {
    const mean = (values: readonly (number | null)[]) => {
      const known = hours.flatMap((hour) => values[hour] ?? []);
      return known.length === 0 ? null : known.reduce((sum, one) => sum + one, 0) / known.length;
    };
    return {
      day,
      measuredF: mean(input.measuredF),
      assumedF: mean(input.assumedF),
      fittedF: mean(input.fittedF),
    };
  });
}

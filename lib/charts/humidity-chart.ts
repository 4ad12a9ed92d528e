import { scaleLinear } from "d3-scale";
import { axisOver, yTicks } from "./axes";
import { type ChartGeometry, type ChartTick, label, type Plot, path, rectangle } from "./geometry";
import type { HumidityChartInput, HumidityReading } from "./humidity-input";
import { above, humidityTable, humidityWords } from "./humidity-words";
import { drawSegments, type Point, segments, thinToPixels } from "./segments";
import { timeTicks } from "./time-ticks";

const MS_PER_MINUTE = 60_000;
const HEIGHTS = { humidity: 240, dew: 110 } as const;
/** On paper, where a picture shares its page with what is said of it. */
const LOW_HEIGHTS = { humidity: 190, dew: 84 } as const;
const BETWEEN = 44;

/** Relative humidity over time against its band, and the dew point below it. `null` without any reading. */
export function humidityChart(input: HumidityChartInput): ChartGeometry | null {
  const humidity = series(input.readings, (reading) => reading.relativeHumidityPercent);
  const dew = series(input.readings, (reading) => reading.dewPointF ?? null);
  const humidities = known(humidity);
  const fromMs = input.readings[0]?.atMs;
  const toMs = input.readings.at(-1)?.atMs;
  if (humidities.length === 0 || fromMs === undefined || toMs === undefined) return null;
  const dews = known(dew);

  const isNarrow = input.width < 500;
  const heights = input.isLow === true ? LOW_HEIGHTS : HEIGHTS;
  const plot: Plot = {
    left: 44,
    top: 26,
    right: input.width - (isNarrow ? 40 : 72),
    bottom: 26 + heights.humidity,
  };
  const dewPlot: Plot = { ...plot, top: plot.bottom + BETWEEN, bottom: plot.bottom + BETWEEN + heights.dew };
  const foot = dews.length === 0 ? plot : dewPlot;
  const x = scaleLinear()
    .domain(fromMs === toMs ? [fromMs - MS_PER_MINUTE, toMs + MS_PER_MINUTE] : [fromMs, toMs])
    .range([plot.left, plot.right]);
  const { lowPercent, highPercent } = input.band;
  const y = axisOver([...humidities, lowPercent, highPercent], [plot.bottom, plot.top], 6);

  const gapAfter = input.gapAfterMinutes * MS_PER_MINUTE;
  const stretches = segments(humidity, gapAfter).map((stretch) => thinToPixels(stretch, x));
  const line = drawSegments(stretches, ([ms, percent]) => [x(ms), y.at(percent)], {
    key: "humidity",
    tone: "a",
  });
  const over = stretches.map((stretch, index) =>
    path(`over-${index}`, above(stretch, highPercent, x, y.at), "short", { kind: "wash" }),
  );
  const dewPart = dews.length === 0 ? null : dewPanel(dew, dews, gapAfter, x, dewPlot);

  return {
    width: input.width,
    height: foot.bottom + 26,
    paths: [
      path("band", rectangle(plot.left, y.at(highPercent), plot.right, y.at(lowPercent)), "meets", {
        kind: "wash",
      }),
      ...over.filter((area) => area.d !== ""),
      path("limit", `M${plot.left},${y.at(highPercent)}H${plot.right}`, "short", {
        dashes: "dashed",
        weight: 1.5,
      }),
      ...line.paths,
      ...(dewPart?.paths ?? []),
    ],
    ticks: [...yTicks(y, plot), ...(dewPart?.ticks ?? []), ...clockTicks(input, x, fromMs, toMs, plot, foot)],
    labels: [
      label("y", 4, 14, "Relative humidity, %"),
      label(
        "limit",
        plot.right + 5,
        y.at(highPercent) + 4,
        isNarrow ? `${highPercent} %` : `limit ${highPercent} %`,
        {
          tone: "short",
        },
      ),
      ...(dewPart?.labels ?? []),
    ],
    marks: [...line.marks, ...(dewPart?.marks ?? [])],
    textAlternative: humidityWords(input, humidities, stretches.length, fromMs, toMs),
    ...humidityTable(input),
  };
}

function dewPanel(
  dew: readonly (readonly [number, number | null])[],
  dews: readonly number[],
  gapAfter: number,
  x: (ms: number) => number,
  plot: Plot,
) {
  const y = axisOver(dews, [plot.bottom, plot.top], 3);
  const stretches = segments(dew, gapAfter).map((stretch) => thinToPixels(stretch, x));
  const at = ([ms, f]: Point): Point => [x(ms), y.at(f)];
  const drawn = drawSegments(stretches, at, { key: "dew-point", tone: "d", weight: 1.5 });
  return { ...drawn, ticks: yTicks(y, plot), labels: [label("dew", 4, plot.top - 10, "Dew point, °F")] };
}

function clockTicks(
  input: HumidityChartInput,
  x: (ms: number) => number,
  fromMs: number,
  toMs: number,
  plot: Plot,
  foot: Plot,
): readonly ChartTick[] {
  const count = Math.max(2, Math.floor(input.width / 80));
  return timeTicks(fromMs, toMs, input.timeZone, count).map(({ atMs, text }) => ({
    axis: "x",
    at: x(atMs),
    text,
    guide: [x(atMs), plot.top, x(atMs), foot.bottom],
  }));
}

function series(readings: readonly HumidityReading[], read: (reading: HumidityReading) => number | null) {
  return readings.map((reading) => [reading.atMs, read(reading)] as const);
}

function known(points: readonly (readonly [number, number | null])[]): readonly number[] {
  return points.flatMap(([, value]) => (value === null ? [] : [value]));
}

import { scaleLinear } from "d3-scale";
import { axisOver, yTicks } from "./axes";
import {
  type ChartGeometry,
  type ChartPath,
  type ChartTick,
  label,
  type Plot,
  path,
  rectangle,
} from "./geometry";
import type { LivedChartInput } from "./lived-input";
import { knownOf, type Line, livedTable, livedWords, PANELS } from "./lived-words";
import { drawSegments, type Point, segments } from "./segments";
import { timeTicks } from "./time-ticks";

const RIBBONS: readonly Omit<Line, "dashes">[] = [
  { channel: "first", name: "cooling", tone: "a" },
  { channel: "second", name: "second stage", tone: "short" },
  { channel: "fan", name: "fan", tone: "muted" },
];
/** Room left and right of the plot, in the chart’s units. */
export const LIVED_SIDES = { left: 44, right: 12 } as const;
const BETWEEN = 40;
const RIBBON = 14;
const MS_PER_MINUTE = 60_000;

/** What the house did between two instants: humidity, dew points, temperature, and what ran. `null` without a reading. */
export function livedChart(input: LivedChartInput): ChartGeometry | null {
  const { width, fromMs, toMs, atMs, channels } = input;
  const drawn = PANELS.filter(({ lines }) => lines.some(({ channel }) => knownOf(input, channel).length > 0));
  if (drawn.length === 0) return null;
  const side = { left: LIVED_SIDES.left, right: width - LIVED_SIDES.right };
  const x = scaleLinear()
    .domain(fromMs === toMs ? [fromMs - MS_PER_MINUTE, toMs + MS_PER_MINUTE] : [fromMs, toMs])
    .range([side.left, side.right]);
  const paths: ChartPath[] = [];
  const ticks: ChartTick[] = [];
  const labels = [];
  const marks = [];
  let top = 26;
  for (const panel of drawn) {
    const plot: Plot = { ...side, top, bottom: top + panel.height };
    const isHumidity = panel.unit === "%";
    const limit = isHumidity && input.limitPct !== null ? [input.limitPct] : [];
    const values = panel.lines.flatMap(({ channel }) => knownOf(input, channel));
    const y = axisOver([...values, ...limit, ...(isHumidity ? [50, 60] : [])], [plot.bottom, plot.top], 5);
    if (isHumidity) {
      paths.push(
        path("band", rectangle(plot.left, y.at(60), plot.right, y.at(50)), "meets", { kind: "wash" }),
      );
    }
    for (const percent of limit) {
      paths.push(
        path("limit", `M${plot.left},${y.at(percent)}H${plot.right}`, "short", {
          dashes: "dashed",
          weight: 1.5,
        }),
      );
    }
    for (const line of panel.lines) {
      const found = channels[line.channel];
      if (found === undefined) continue;
      const points = atMs.flatMap((ms, index): readonly (readonly [number, number | null])[] => {
        const [low, high] = [found.low[index] ?? null, found.high[index] ?? null];
        return low === high
          ? [[ms, low]]
          : [
              [ms, low],
              [ms, high],
            ];
      });
      const stretches = segments(points, input.gapAfterMinutes * MS_PER_MINUTE);
      const at = ([ms, value]: Point): Point => [round(x(ms)), y.at(value)];
      const { tone, dashes } = line;
      const said = drawSegments(stretches, at, { key: line.channel, tone, dashes, weight: 1.4 });
      paths.push(...said.paths);
      marks.push(...said.marks);
    }
    ticks.push(...yTicks(y, plot));
    const { titleWith } = panel;
    const title = titleWith && knownOf(input, titleWith.channel).length > 0 ? titleWith.title : panel.title;
    labels.push(label(panel.title, 4, top - 10, title));
    top = plot.bottom + BETWEEN;
  }
  const ribbons = RIBBONS.filter(({ channel }) => knownOf(input, channel).some((share) => share > 0));
  for (const [row, { channel, name, tone }] of ribbons.entries()) {
    const y = top - 14 + row * (RIBBON + 20);
    labels.push(label(name, 4, y, `${name}: height is the share of the time`));
    paths.push(path(`ribbon-${channel}`, ribbonPath(input, channel, x, y + 6), tone, { kind: "solid" }));
    paths.push(
      path(`base-${channel}`, `M${side.left},${y + 6 + RIBBON}H${side.right}`, "rule", { weight: 1 }),
    );
  }
  const foot = top - BETWEEN + (ribbons.length === 0 ? 0 : ribbons.length * (RIBBON + 20) + 20);
  const count = Math.max(2, Math.floor(width / 90));
  for (const tick of timeTicks(fromMs, toMs, input.timeZone, count)) {
    const at = round(x(tick.atMs));
    ticks.push({ axis: "x", at, text: tick.text, guide: [at, 26, at, foot] });
  }
  return {
    width,
    height: foot + 26,
    paths,
    ticks,
    labels,
    marks,
    textAlternative: livedWords(input),
    ...livedTable(input),
  };
}

function ribbonPath(input: LivedChartInput, channel: string, x: (ms: number) => number, top: number): string {
  const found = input.channels[channel];
  const half = input.atMs.length < 2 ? 1 : ((input.toMs - input.fromMs) / input.atMs.length / 2) * 1.02;
  return input.atMs
    .flatMap((ms, index) => {
      const share = found?.high[index] ?? 0;
      if (share <= 0) return [];
      const bottom = top + RIBBON;
      return [rectangle(round(x(ms - half)), round(bottom - share * RIBBON), round(x(ms + half)), bottom)];
    })
    .join("");
}

const round = (value: number) => Math.round(value * 100) / 100;

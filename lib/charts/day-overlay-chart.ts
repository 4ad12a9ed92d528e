import { axisOver, yTicks } from "./axes";
import { type ChartGeometry, type ChartPath, label, type Plot, path } from "./geometry";
import { numberText } from "./number-text";
import { drawSegments, type Point, segments } from "./segments";

type Values = readonly (number | null)[];

export type DayOverlayInput = {
  readonly width: number;
  /** What is drawn, and its unit. */
  readonly name: string;
  readonly unit: string;
  readonly stepMin: number;
  readonly median: Values;
  readonly low: Values;
  readonly high: Values;
  readonly days: readonly { readonly localDay: number; readonly values: Values }[];
  /** The day picked out, days since 1970. */
  readonly chosen: number | null;
  readonly limit: number | null;
};

/** With more days than this their lines would be one grey: the band speaks for them. */
const MOST_LINES = 62;
const TOP = 62;
const HEIGHT = 220;

/** The days of a log upon each other by clock hour, with the median, the band of most days, and one day picked out. `null` without a reading. */
export function dayOverlayChart(input: DayOverlayInput): ChartGeometry | null {
  const { width, stepMin, median, low, high, days, limit } = input;
  const lines = days.length <= MOST_LINES ? days : [];
  const chosen = days.find(({ localDay }) => localDay === input.chosen) ?? null;
  const values = [low, high, chosen?.values ?? [], ...lines.map((day) => day.values)]
    .flat()
    .filter((value) => value !== null);
  if (values.length === 0) return null;
  const plot: Plot = { left: 44, top: TOP, right: width - 12, bottom: TOP + HEIGHT };
  const y = axisOver([...values, ...(limit === null ? [] : [limit])], [plot.bottom, plot.top], 5);
  const xOf = (hour: number) => round(plot.left + ((plot.right - plot.left) * hour) / 24);
  const hourOf = (step: number) => ((step + 0.5) * stepMin) / 60;
  const stretches = (of: Values) =>
    segments(
      of.map((value, step) => [hourOf(step), value] as const),
      24,
    );
  const at = ([hour, value]: Point): Point => [xOf(hour), y.at(value)];
  const drawn = (key: string, of: Values, look: { tone: "muted" | "a" | "short"; weight: number }) =>
    drawSegments(stretches(of), at, { key, ...look });
  const thin = lines
    .filter((day) => day !== chosen)
    .flatMap(
      ({ localDay, values: of }) => drawn(`day-${localDay}`, of, { tone: "muted", weight: 0.6 }).paths,
    );
  const middle = drawn("median", median, { tone: "a", weight: 2.4 });
  const picked = chosen && drawn("chosen", chosen.values, { tone: "short", weight: 2 });
  const every = width < 500 ? 6 : 3;
  return {
    width,
    height: plot.bottom + 44,
    paths: [
      path(
        "band",
        bandPath(low, high, (step) => xOf(hourOf(step)), y.at),
        "a",
        { kind: "wash" },
      ),
      ...oneLine(thin),
      ...(limit === null
        ? []
        : [
            path("limit", `M${plot.left},${y.at(limit)}H${plot.right}`, "ink", {
              dashes: "dashed",
              weight: 1.2,
            }),
          ]),
      ...middle.paths,
      ...(picked?.paths ?? []),
    ],
    ticks: [
      ...yTicks(y, plot),
      ...Array.from({ length: 24 / every + 1 }, (_, index) => {
        const x = xOf(index * every);
        return {
          axis: "x" as const,
          at: x,
          text: `${index * every}:00`,
          guide: [x, plot.top, x, plot.bottom] as const,
        };
      }),
    ],
    labels: [
      label("y", 4, 14, `${input.name}, ${input.unit}`),
      label("key", 4, 32, "thick: median of the days; shaded: 8 days of 10"),
      ...(chosen === null
        ? []
        : [label("chosen", 4, 50, `picked out: ${dayText(chosen.localDay)}`, { tone: "short" })]),
      label("x", plot.right, plot.bottom + 36, "hour of the house’s clock", { anchor: "end" }),
    ],
    marks: [...middle.marks, ...(picked?.marks ?? [])],
    textAlternative: wordsOf(input, hourOf),
    tableHead: [
      "Hour",
      "Median",
      "10th percentile",
      "90th percentile",
      ...(chosen === null ? [] : [dayText(chosen.localDay)]),
    ],
    tableRows: median.map((value, step) => [
      clockOf((step * stepMin) / 60),
      ...[
        value,
        low[step] ?? null,
        high[step] ?? null,
        ...(chosen === null ? [] : [chosen.values[step] ?? null]),
      ].map((one) => (one === null ? "–" : numberText(one, 1))),
    ]),
  };
}

/** A day since 1970 as a date. */
export function dayText(localDay: number): string {
  return new Date(localDay * 86_400_000).toLocaleDateString("en-US", {
    timeZone: "UTC",
    weekday: "short",
    year: "numeric",
    month: "short",
    day: "numeric",
  });
}

/** Many thin lines are one path, so that a page stays light. */
function oneLine(paths: readonly ChartPath[]): readonly ChartPath[] {
  const d = paths.map((one) => one.d).join("");
  return d === "" ? [] : [path("days", d, "muted", { weight: 0.6 })];
}

function bandPath(low: Values, high: Values, xOf: (step: number) => number, yOf: (value: number) => number) {
  let d = "";
  let open: number[] = [];
  const close = () => {
    const there = open.map((step) => `${xOf(step)},${yOf(high[step] ?? 0)}`);
    const back = open.toReversed().map((step) => `${xOf(step)},${yOf(low[step] ?? 0)}`);
    if (open.length > 1) d += `M${[...there, ...back].join("L")}Z`;
    open = [];
  };
  for (let step = 0; step < low.length; step++) {
    if (low[step] === null || high[step] === null) close();
    else open.push(step);
  }
  close();
  return d;
}

function wordsOf(
  { days, median, unit, name, high }: DayOverlayInput,
  hourOf: (step: number) => number,
): string {
  const known = median.flatMap((value, step) => (value === null ? [] : [{ value, step }]));
  const [first] = known;
  if (first === undefined) return "";
  const least = known.reduce((best, one) => (one.value < best.value ? one : best), first);
  const most = known.reduce((best, one) => (one.value > best.value ? one : best), first);
  const when = (step: number) => clockOf(hourOf(step) - 0.25);
  const tenth = high[most.step];
  return `${name} of ${days.length} ${days.length === 1 ? "day" : "days"}: the median is lowest at ${when(least.step)} (${numberText(least.value, 1)} ${unit}) and highest at ${when(most.step)} (${numberText(most.value, 1)} ${unit}; one day in ten is above ${tenth == null ? "–" : numberText(tenth, 1)} ${unit} then).`;
}

const clockOf = (hour: number) =>
  `${Math.floor(hour)}:${String(Math.round((hour % 1) * 60)).padStart(2, "0")}`;
const round = (value: number) => Math.round(value * 100) / 100;

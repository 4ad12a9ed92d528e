import { axisOver, yTicks } from "./axes";
import { type ChartGeometry, label, type Plot, path, rectangle, type Tone } from "./geometry";

export type BarsInput = {
  readonly width: number;
  readonly unit: string;
  /** What the columns are. */
  readonly columnName: string;
  readonly columns: readonly string[];
  /** One value a column, stacked upwards in this order. */
  readonly series: readonly {
    readonly name: string;
    readonly tone: Tone;
    readonly values: readonly number[];
  }[];
  readonly decimals: number;
  readonly words: string;
};

const HEIGHT = 180;

/** Columns, stacked when there are several series. `null` when all of them are 0. */
export function bars(input: BarsInput): ChartGeometry | null {
  const { columns, series, width } = input;
  const totals = columns.map((_, at) => series.reduce((sum, { values }) => sum + (values[at] ?? 0), 0));
  if (!totals.some((total) => total > 0)) return null;
  const legend = series.length > 1;
  const plot: Plot = {
    left: 44,
    top: legend ? 44 : 26,
    right: width - 10,
    bottom: (legend ? 44 : 26) + HEIGHT,
  };
  const y = axisOver([0, ...totals], [plot.bottom, plot.top], 4);
  const each = (plot.right - plot.left) / columns.length;
  const every = Math.max(1, Math.ceil(40 / each));
  const below = new Array<number>(columns.length).fill(0);
  const paths = series.map(({ name, tone, values }) => {
    const d = columns
      .map((_, at) => {
        const value = values[at] ?? 0;
        const base = below[at] ?? 0;
        below[at] = base + value;
        const left = plot.left + at * each;
        return value <= 0
          ? ""
          : rectangle(round(left + each * 0.12), y.at(base + value), round(left + each * 0.88), y.at(base));
      })
      .join("");
    return path(name, d, tone, { kind: "solid" });
  });
  return {
    width,
    height: plot.bottom + 26,
    paths: [
      ...paths,
      ...(legend
        ? series.map(({ name, tone }, at) =>
            path(`key ${name}`, rectangle(plot.left + at * 110, 22, plot.left + at * 110 + 10, 32), tone, {
              kind: "solid",
            }),
          )
        : []),
    ],
    ticks: [
      ...yTicks(y, plot),
      ...columns.flatMap((text, at) => {
        const middle = round(plot.left + (at + 0.5) * each);
        return at % every === 0
          ? [
              {
                axis: "x" as const,
                at: middle,
                text,
                guide: [middle, plot.bottom, middle, plot.bottom] as const,
              },
            ]
          : [];
      }),
    ],
    labels: [
      label("unit", 4, 14, input.unit),
      ...(legend
        ? series.map(({ name }, at) => label(`name ${name}`, plot.left + at * 110 + 14, 32, name))
        : []),
    ],
    marks: [],
    textAlternative: input.words,
    tableHead: [input.columnName, ...series.map(({ name }) => name)],
    tableRows: columns.map((column, at) => [
      column,
      ...series.map(({ values }) => (values[at] ?? 0).toFixed(input.decimals)),
    ]),
  };
}

const round = (value: number) => Math.round(value * 100) / 100;

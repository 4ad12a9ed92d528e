import { axisOver, yTicks } from "./axes";
import { type ChartGeometry, label, type Plot, path, rectangle } from "./geometry";
import { numberText } from "./number-text";

const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

export type MonthRangesInput = {
  readonly width: number;
  readonly limitPct: number;
  /** January first. */
  readonly months: readonly { readonly central: number; readonly low: number; readonly high: number }[];
};

/** Hours above the limit by month: a column for the house as assumed, a line from least to most of the houses and years drawn. */
export function monthRanges({ width, limitPct, months }: MonthRangesInput): ChartGeometry | null {
  if (months.length === 0) return null;
  const plot: Plot = { left: 44, top: 40, right: width - 10, bottom: 220 };
  const y = axisOver([0, 10, ...months.map(({ high }) => high)], [plot.bottom, plot.top], 4);
  const each = (plot.right - plot.left) / months.length;
  const middle = (month: number) => round(plot.left + (month + 0.5) * each);
  const columns = months
    .map(({ central }, month) =>
      central <= 0
        ? ""
        : rectangle(
            round(middle(month) - each * 0.32),
            y.at(central),
            round(middle(month) + each * 0.32),
            y.at(0),
          ),
    )
    .join("");
  const spans = months
    .map(({ low, high }, month) => {
      const x = middle(month);
      const [from, to] = [y.at(low), y.at(high)];
      return from === to ? "" : `M${x},${from}V${to}M${x - 4},${from}H${x + 4}M${x - 4},${to}H${x + 4}`;
    })
    .join("");
  const total = months.reduce((sum, { central }) => sum + central, 0);
  const wettest = months.reduce(
    (most, one, month) => (one.central > (months[most]?.central ?? 0) ? month : most),
    0,
  );
  return {
    width,
    height: plot.bottom + 26,
    paths: [
      path("central", columns, "b", { kind: "solid" }),
      path("spread", spans, "ink", { weight: 1.5 }),
      path("foot", `M${plot.left},${plot.bottom}H${plot.right}`, "muted", { weight: 1 }),
    ],
    ticks: [
      ...yTicks(y, plot),
      ...months.flatMap((_, month) =>
        each < 34 && month % 2 === 1
          ? []
          : [
              {
                axis: "x" as const,
                at: middle(month),
                text: MONTHS[month] ?? "",
                guide: [middle(month), plot.bottom, middle(month), plot.bottom] as const,
              },
            ],
      ),
    ],
    labels: [
      label("y", 4, 14, `Hours above ${limitPct} %`),
      label("key", 4, 30, "column: house as assumed; line: least to most"),
    ],
    marks: [],
    textAlternative: `${numberText(total, 0)} hours above ${limitPct} % in the year; most in ${MONTHS[wettest]}, ${numberText(months[wettest]?.central ?? 0, 0)} (${numberText(months[wettest]?.low ?? 0, 0)} to ${numberText(months[wettest]?.high ?? 0, 0)}).`,
    tableHead: ["Month", "House as assumed, h", "Least, h", "Most, h"],
    tableRows: months.map(({ central, low, high }, month) => [
      MONTHS[month] ?? "",
      ...[central, low, high].map((hours) => numberText(hours, 0)),
    ]),
  };
}

const round = (value: number) => Math.round(value * 100) / 100;

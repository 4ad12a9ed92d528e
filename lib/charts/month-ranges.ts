import { axisOver, yTicks } from "./axes";
import { type ChartGeometry, label, type Plot, path, rectangle } from "./geometry";
import { numberText } from "./number-text";

/** Everything the picture says; paper also has it in other languages. */
export type MonthRangesWords = {
  /** January first, short. */
  readonly months: readonly string[];
  /** What the columns show. */
  readonly axis: (limitPct: number) => string;
  /** Of the columns; hours when it is not said. */
  readonly unit?: string;
  readonly key: string;
  readonly said: (facts: MonthRangesFacts) => string;
};

/** The year's hours above the limit, and those of the month with most. */
export type MonthRangesFacts = {
  readonly hours: string;
  readonly limitPct: number;
  readonly month: string;
  readonly inMonth: string;
  readonly low: string;
  readonly high: string;
};

const ENGLISH: MonthRangesWords = {
  months: ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"],
  axis: (limitPct) => `Hours above ${limitPct} %`,
  key: "column: house as assumed; line: least to most",
  said: ({ hours, limitPct, month, inMonth, low, high }) =>
    high === "0"
      ? `No hour above ${limitPct} % in the year.`
      : `${hours} hours above ${limitPct} % in the year; most in ${month}, ${inMonth} (${low} to ${high}).`,
};

/** The same picture of how long cooling runs. */
export const COOLING_HOURS: MonthRangesWords = {
  ...ENGLISH,
  axis: () => "Hours of cooling",
  said: ({ hours, month, inMonth, low, high }) =>
    `Cooling runs ${hours} hours in the year; most in ${month}, ${inMonth} (${low} to ${high}).`,
};

/** The same picture of the mean humidity. */
export const MEAN_HUMIDITY: MonthRangesWords = {
  ...ENGLISH,
  axis: () => "Mean relative humidity, %",
  unit: "%",
  said: ({ month, inMonth, low, high }) =>
    `The most humid month is ${month}, ${inMonth} % in the mean (${low} to ${high} %).`,
};

export type MonthRangesInput = {
  readonly width: number;
  readonly limitPct: number;
  /** January first. */
  readonly months: readonly { readonly central: number; readonly low: number; readonly high: number }[];
};

/** Hours above the limit by month: a column for the house as assumed, a line from least to most of the houses and years drawn. */
export function monthRanges(
  { width, limitPct, months }: MonthRangesInput,
  words = ENGLISH,
): ChartGeometry | null {
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
                text: words.months[month] ?? "",
                guide: [middle(month), plot.bottom, middle(month), plot.bottom] as const,
              },
            ],
      ),
    ],
    labels: [label("y", 4, 14, words.axis(limitPct)), label("key", 4, 30, words.key)],
    marks: [],
    textAlternative: words.said({
      hours: numberText(total, 0),
      limitPct,
      month: words.months[wettest] ?? "",
      inMonth: numberText(months[wettest]?.central ?? 0, 0),
      low: numberText(months[wettest]?.low ?? 0, 0),
      high: numberText(months[wettest]?.high ?? 0, 0),
    }),
    tableHead: [
      "Month",
      ...["House as assumed", "Least", "Most"].map((head) => `${head}, ${words.unit ?? "h"}`),
    ],
    tableRows: months.map(({ central, low, high }, month) => [
      words.months[month] ?? "",
      ...[central, low, high].map((hours) => numberText(hours, 0)),
    ]),
  };
}

const round = (value: number) => Math.round(value * 100) / 100;

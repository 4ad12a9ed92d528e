import { axisOver, yTicks } from "./axes";
import { type ChartGeometry, type ChartPath, label, type Plot, path, rectangle } from "./geometry";
import { numberText } from "./number-text";

const HEIGHT = 150;
const RUN_HEIGHT = 46;

export type ForecastHumidityInput = {
  readonly width: number;
  readonly limitPct: number;
  /** Relative humidity of the rooms, one value a step; drawn as a line. */
  readonly meanPct: readonly number[];
  /** Highest of each step, drawn as a band above the line; `null` where the steps are hours. */
  readonly highestPct: readonly number[] | null;
  /** Share of each step that cooling ran, 0 to 1: the bars below. */
  readonly runShare: readonly number[];
  /** Places on the foot: after how many steps, and the words there. */
  readonly ticks: readonly { readonly step: number; readonly text: string }[];
  /** What a step is, for the table, and each step's name. */
  readonly stepName: string;
  readonly steps: readonly string[];
  readonly words: string;
};

/** Humidity of a simulated week or year against the limit, and below it how much cooling ran. */
export function forecastHumidity(input: ForecastHumidityInput): ChartGeometry | null {
  const { meanPct, highestPct, runShare, limitPct, width } = input;
  if (meanPct.length < 2) return null;
  const plot: Plot = { left: 36, top: 26, right: width - 10, bottom: 26 + HEIGHT };
  const foot = plot.bottom + 14 + RUN_HEIGHT;
  const y = axisOver([...meanPct, ...(highestPct ?? []), limitPct], [plot.bottom, plot.top], 5);
  const x = (step: number) => round(plot.left + (step / meanPct.length) * (plot.right - plot.left));
  const at = (step: number) => x(step + 0.5);
  const line = (values: readonly number[]) =>
    values.map((pct, step) => `${step === 0 ? "M" : "L"}${at(step)},${y.at(pct)}`).join("");
  const band: readonly ChartPath[] =
    highestPct === null
      ? []
      : [
          path(
            "highest",
            `${line(highestPct)}${meanPct
              .map((pct, step) => ({ pct, step }))
              .reverse()
              .map(({ pct, step }) => `L${at(step)},${y.at(pct)}`)
              .join("")}Z`,
            "a",
            { kind: "wash" },
          ),
        ];
  const runs = runShare
    .map((share, step) =>
      share <= 0 ? "" : rectangle(x(step), round(foot - share * RUN_HEIGHT), x(step + 1), foot),
    )
    .join("");
  return {
    width,
    height: foot + 24,
    paths: [
      ...band,
      path("limit", `M${plot.left},${y.at(limitPct)}H${plot.right}`, "b", { dashes: "dashed", weight: 1.5 }),
      path("mean", line(meanPct), "a"),
      path("runs", runs, "c", { kind: "solid" }),
      path("foot", `M${plot.left},${foot}H${plot.right}`, "muted", { weight: 1 }),
    ],
    ticks: [
      ...yTicks(y, plot),
      ...input.ticks
        .filter(({ step }) => x(step) < plot.right - 14)
        .map(({ step, text }) => ({
          axis: "x" as const,
          at: x(step),
          text,
          guide: [x(step), plot.top, x(step), foot] as const,
        })),
    ],
    labels: [
      label("y", 4, 14, "Relative humidity, %"),
      label("limit", plot.right, y.at(limitPct) - 4, `limit ${limitPct} %`, { anchor: "end", tone: "b" }),
      label("runs", plot.left + 2, plot.bottom + 12, "cooling runs"),
    ],
    marks: [],
    textAlternative: input.words,
    tableHead: [
      input.stepName,
      "Mean, %",
      ...(highestPct === null ? [] : ["Highest, %"]),
      "Cooling, share of the time",
    ],
    tableRows: meanPct.map((pct, step) => [
      input.steps[step] ?? "",
      numberText(pct, 0),
      ...(highestPct === null ? [] : [numberText(highestPct[step] ?? 0, 0)]),
      numberText(100 * (runShare[step] ?? 0), 0),
    ]),
  };
}

const round = (value: number) => Math.round(value * 100) / 100;

import { axisOver, xTicks, yTicks } from "./axes";
import { type ChartGeometry, type ChartPath, label, type Plot, path } from "./geometry";
import { numberText } from "./number-text";

export type LoadLineInput = {
  readonly width: number;
  readonly days: readonly {
    readonly localDay: number;
    readonly outdoorF: number;
    readonly sensibleBtuh: number;
  }[];
  readonly slopeBtuhPerF: number;
  readonly slopeLow: number;
  readonly slopeHigh: number;
  readonly interceptBtuh: number;
  readonly zeroLoadF: number;
  /** The load summary's design point; `null` when it has none. */
  readonly design: { readonly outdoorF: number; readonly sensibleBtuh: number } | null;
};

/** Sensible cooling of each day against its outdoor temperature, the line through them, and the load summary's point. */
export function loadLineChart(input: LoadLineInput): ChartGeometry | null {
  const { width, days, design } = input;
  if (days.length === 0) return null;
  const plot: Plot = { left: 58, top: 26, right: width - 14, bottom: 246 };
  const temperatures = days.map(({ outdoorF }) => outdoorF);
  const far = [...temperatures, ...(design ? [design.outdoorF] : [])];
  const [least, most] = [Math.min(...temperatures), Math.max(...far)];
  const at = (f: number) => input.interceptBtuh + input.slopeBtuhPerF * f;
  const middleF = temperatures.reduce((sum, f) => sum + f, 0) / temperatures.length;
  const edge = (slope: number, f: number) => at(middleF) + slope * (f - middleF);
  const x = axisOver(far, [plot.left, plot.right], Math.max(3, Math.floor(width / 110)));
  const y = axisOver(
    [
      0,
      ...days.map(({ sensibleBtuh }) => sensibleBtuh),
      at(most),
      edge(input.slopeHigh, most),
      ...(design ? [design.sensibleBtuh] : []),
    ],
    [plot.bottom, plot.top],
    5,
  );
  const line = (slope: number): string => {
    const from = Math.max(least, middleF - at(middleF) / slope);
    return `M${x.at(from)},${y.at(edge(slope, from))}L${x.at(most)},${y.at(edge(slope, most))}`;
  };
  const low = line(input.slopeLow > 0 ? input.slopeLow : input.slopeBtuhPerF);
  const paths: readonly ChartPath[] = [
    path("low", low, "a", { dashes: "dotted", weight: 1.5 }),
    path("high", line(input.slopeHigh), "a", { dashes: "dotted", weight: 1.5 }),
    path("line", line(input.slopeBtuhPerF), "a"),
  ];
  return {
    width,
    height: plot.bottom + 44,
    paths,
    ticks: [...xTicks(x, plot), ...yTicks(y, plot)],
    labels: [
      label("y", 4, 14, "Sensible cooling, Btu/h, mean of the day"),
      label("x", plot.right, plot.bottom + 36, "mean outdoor temperature of the day, °F", { anchor: "end" }),
    ],
    marks: [
      ...days.map(({ localDay, outdoorF, sensibleBtuh }) => ({
        key: `day ${localDay}`,
        x: x.at(outdoorF),
        y: y.at(sensibleBtuh),
        shape: "ring" as const,
        tone: "b" as const,
        text: `${dayText(localDay)}: ${outdoorF.toFixed(0)} °F, ${numberText(sensibleBtuh, 0)} Btu/h`,
      })),
      ...(design === null
        ? []
        : [
            {
              key: "design",
              x: x.at(design.outdoorF),
              y: y.at(design.sensibleBtuh),
              shape: "lozenge" as const,
              tone: "ink" as const,
              text: `Load summary: ${design.outdoorF.toFixed(0)} °F, ${numberText(design.sensibleBtuh, 0)} Btu/h`,
            },
          ]),
    ],
    textAlternative: `${days.length} days of cooling. The line rises ${input.slopeBtuhPerF.toFixed(0)} Btu/h per °F (95 %: ${input.slopeLow.toFixed(0)} to ${input.slopeHigh.toFixed(0)}, dotted) from ${input.zeroLoadF.toFixed(0)} °F${
      design === null
        ? ""
        : `; at ${design.outdoorF.toFixed(0)} °F it stands at ${numberText(at(design.outdoorF), 0)} Btu/h, the load summary (lozenge) at ${numberText(design.sensibleBtuh, 0)} Btu/h`
    }.`,
    tableHead: ["Day", "Outdoor, °F", "Sensible cooling, Btu/h"],
    tableRows: days.map(({ localDay, outdoorF, sensibleBtuh }) => [
      dayText(localDay),
      outdoorF.toFixed(1),
      numberText(sensibleBtuh, 0),
    ]),
  };
}

const dayText = (localDay: number) => new Date(localDay * 86_400_000).toISOString().slice(0, 10);

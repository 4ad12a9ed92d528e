import { axisOver, xTicks, yTicks } from "./axes";
import { type ChartGeometry, type ChartMark, type ChartPath, label, type Plot, path } from "./geometry";
import { numberText } from "./number-text";

type Line = { readonly slopeBtuhPerF: number; readonly interceptBtuh: number };
type Interval = { readonly slopeLow: number; readonly slopeHigh: number };
type Point = {
  readonly localDay: number;
  readonly outdoorF: number;
  readonly btuh: number;
};

export type LoadLineInput = Line & {
  readonly width: number;
  readonly days: readonly {
    readonly localDay: number;
    readonly outdoorF: number;
    readonly sensibleBtuh: number;
    readonly hottestHourF: number;
    readonly hourlyBtuh: readonly number[];
  }[];
  readonly zeroLoadF: number;
  readonly peakHour: (Line & Interval & { readonly hour: number }) | null;
  /** The load summary's design point; `null` when it has none. */
  readonly design: { readonly outdoorF: number; readonly sensibleBtuh: number } | null;
};

/**
 * Sensible cooling against outdoor temperature, two ways: each day's mean at its mean temperature, and its peak hour at its hottest
 * hour. Only the second is of the same kind as the load summary's point.
 */
export function loadLineChart(input: LoadLineInput): ChartGeometry | null {
  const { width, days, design, peakHour: peak } = input;
  if (days.length === 0) return null;
  const plot: Plot = { left: 58, top: 44, right: width - 14, bottom: 264 };
  const means = days.map(({ localDay, outdoorF, sensibleBtuh: btuh }) => ({ localDay, outdoorF, btuh }));
  const peaks = peak === null ? [] : peaksOf(days, peak.hour);
  const all = [...means, ...peaks];
  const far = [...all.map(({ outdoorF }) => outdoorF), ...(design ? [design.outdoorF] : [])];
  const most = Math.max(...far);
  const middleF = peaks.reduce((sum, { outdoorF }) => sum + outdoorF, 0) / Math.max(1, peaks.length);
  const x = axisOver(far, [plot.left, plot.right], Math.max(3, Math.floor(width / 110)));
  const y = axisOver(
    [
      0,
      ...all.map(({ btuh }) => btuh),
      ...(peak === null ? [] : [at(peak, middleF) + peak.slopeHigh * (most - middleF)]),
      ...(design ? [design.sensibleBtuh] : []),
    ],
    [plot.bottom, plot.top],
    5,
  );
  /** A line through a point, from where it is positive (or its points begin) to `to`. */
  const drawn = (through: { f: number; btuh: number }, slope: number, from: number, to: number) => {
    const start = Math.max(from, through.f - through.btuh / slope);
    const ends = [start, to].map((f) => `${x.at(f)},${y.at(through.btuh + slope * (f - through.f))}`);
    return `M${ends[0]}L${ends[1]}`;
  };
  const span = (points: readonly Point[]) =>
    [Math.min, Math.max].map((edge) => edge(...points.map(({ outdoorF }) => outdoorF))) as [number, number];
  const [coolest, hottest] = span(means);
  const paths: ChartPath[] = [
    path(
      "means",
      drawn({ f: hottest, btuh: at(input, hottest) }, input.slopeBtuhPerF, coolest, hottest),
      "muted",
      { dashes: "dashed", weight: 1.5 },
    ),
  ];
  if (peak !== null && peaks.length > 0) {
    const through = { f: middleF, btuh: at(peak, middleF) };
    const [from] = span(peaks);
    for (const [key, slope] of [
      ["low", peak.slopeLow > 0 ? peak.slopeLow : peak.slopeBtuhPerF],
      ["high", peak.slopeHigh],
    ] as const)
      paths.push(path(key, drawn(through, slope, from, most), "a", { dashes: "dotted", weight: 1.5 }));
    paths.push(path("peak", drawn(through, peak.slopeBtuhPerF, from, most), "a"));
  }
  const mark =
    (shape: ChartMark["shape"], tone: ChartMark["tone"], kind: string) =>
    ({ localDay, outdoorF, btuh }: Point): ChartMark => ({
      key: `${kind} ${localDay}`,
      x: x.at(outdoorF),
      y: y.at(btuh),
      shape,
      tone,
      text: `${dayText(localDay)}, ${kind}: ${outdoorF.toFixed(0)} °F, ${numberText(btuh, 0)} Btu/h`,
    });
  return {
    width,
    height: plot.bottom + 44,
    paths,
    ticks: [...xTicks(x, plot), ...yTicks(y, plot)],
    labels: [
      label("y", 4, 14, "Sensible cooling, Btu/h"),
      label("key", 4, 32, keyWords(peak?.hour ?? null, design !== null)),
      label("x", plot.right, plot.bottom + 36, "outdoor temperature, °F", { anchor: "end" }),
    ],
    marks: [
      ...means.map(mark("ring", "muted", "mean of the day")),
      ...peaks.map(mark("square", "b", "peak hour")),
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
    textAlternative: words(input),
    tableHead: ["Day", "Mean outdoors, °F", "Mean cooling, Btu/h", "Hottest hour, °F", "Peak hour, Btu/h"],
    tableRows: days.map(({ localDay, outdoorF, sensibleBtuh, hottestHourF, hourlyBtuh }) => [
      dayText(localDay),
      outdoorF.toFixed(1),
      numberText(sensibleBtuh, 0),
      hottestHourF.toFixed(1),
      peak === null || !Number.isFinite(hourlyBtuh[peak.hour])
        ? "not read"
        : numberText(hourlyBtuh[peak.hour] ?? 0, 0),
    ]),
  };
}

const at = ({ slopeBtuhPerF, interceptBtuh }: Line, f: number) => interceptBtuh + slopeBtuhPerF * f;

function peaksOf(days: LoadLineInput["days"], hour: number): readonly Point[] {
  return days
    .map(({ localDay, hottestHourF, hourlyBtuh }) => ({
      localDay,
      outdoorF: hottestHourF,
      btuh: hourlyBtuh[hour] ?? Number.NaN,
    }))
    .filter(({ outdoorF, btuh }) => Number.isFinite(outdoorF) && Number.isFinite(btuh));
}

const keyWords = (hour: number | null, hasDesign: boolean) =>
  [
    "○ mean of a day",
    ...(hour === null ? [] : [`■ its hour from ${hour}:00`]),
    ...(hasDesign ? ["◆ load summary"] : []),
  ].join("   ");

function words({ days, slopeBtuhPerF, zeroLoadF, peakHour: peak, design }: LoadLineInput): string {
  const daily = `${days.length} days of cooling. The days’ means rise ${slopeBtuhPerF.toFixed(0)} Btu/h per °F from ${zeroLoadF.toFixed(0)} °F (dashed).`;
  if (peak === null) return `${daily} The log does not tell the peak hour’s load.`;
  const line = ` Between ${peak.hour}:00 and ${peak.hour + 1}:00, when it cools most, ${peak.slopeBtuhPerF.toFixed(0)} Btu/h per °F of the day’s hottest hour (95 %: ${peak.slopeLow.toFixed(0)} to ${peak.slopeHigh.toFixed(0)}, dotted)`;
  return design === null
    ? `${daily}${line}.`
    : `${daily}${line}; at ${design.outdoorF.toFixed(0)} °F that is ${numberText(at(peak, design.outdoorF), 0)} Btu/h, the load summary (lozenge) ${numberText(design.sensibleBtuh, 0)} Btu/h.`;
}

const dayText = (localDay: number) => new Date(localDay * 86_400_000).toISOString().slice(0, 10);

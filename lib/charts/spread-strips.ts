import { scaleLinear } from "d3-scale";
import { type ChartGeometry, type ChartMark, type ChartPath, label, path, rectangle } from "./geometry";
import { numberText } from "./number-text";

export type SpreadStrip = {
  readonly name: string;
  /** Jobs with a value. */
  readonly jobs: number;
  /** 10, 25, 50, 75 and 90 %. */
  readonly quantiles: readonly number[];
  /** Jobs in equal steps from the least to the most of all groups. */
  readonly bins: readonly number[];
  /** Every value where there are few; each is drawn. */
  readonly values: readonly number[] | null;
};

export type SpreadStripsInput = {
  readonly width: number;
  readonly measure: string;
  readonly unit: string;
  readonly decimals: number;
  readonly least: number;
  readonly most: number;
  readonly strips: readonly SpreadStrip[];
};

const STRIP = 62;
const NAME = 18;
const TOP = 8;
const jobsText = (jobs: number) => `${jobs} ${jobs === 1 ? "job" : "jobs"}`;

/** Fewer values than this are drawn one by one only: quartiles of a handful say more than is known. */
const LEAST_FOR_QUARTILES = 8;

/**
 * One strip a group over one common axis: how many jobs at each value, the middle half, the middle 80 % and the median;
 * with few jobs, each job as a mark. `null` without any group.
 */
export function spreadStrips(input: SpreadStripsInput): ChartGeometry | null {
  const { strips, least, most, unit, decimals, measure, width } = input;
  if (strips.length === 0) return null;
  const span = most > least ? most - least : Math.max(1, Math.abs(least));
  const x = scaleLinear()
    .domain(most > least ? [least, most] : [least - span / 2, least + span / 2])
    .nice()
    .range([8, width - 8]);
  const foot = TOP + strips.length * STRIP;
  const text = (value: number) => numberText(value, decimals);
  const drawn = strips.map((strip, index) => drawStrip(strip, TOP + index * STRIP, x, input));
  const ticks = x.ticks(width < 500 ? 4 : 8).map((value) => ({
    axis: "x" as const,
    at: x(value),
    text: text(value),
    guide: [x(value), TOP, x(value), foot] as const,
  }));
  const withUnit = (value: number | undefined) =>
    value === undefined ? "" : `${text(value)} ${unit}`.trim();
  return {
    width,
    height: foot + 40,
    paths: drawn.flatMap((strip) => strip.paths),
    ticks,
    labels: [
      ...strips.map((strip, index) =>
        label(`name-${index}`, 8, TOP + index * STRIP + 12, `${strip.name}, ${jobsText(strip.jobs)}`, {
          tone: "ink",
          strong: true,
        }),
      ),
      label("x", width - 8, foot + 34, unit === "" ? measure : `${measure}, ${unit}`, { anchor: "end" }),
    ],
    marks: drawn.flatMap((strip) => strip.marks),
    textAlternative: `${measure} by group. ${strips
      .map(({ name, jobs, values, quantiles: [low10, , median, , high90] }) =>
        jobs < LEAST_FOR_QUARTILES && values !== null
          ? `${name}: ${jobsText(jobs)}, ${[...new Set([values[0], values.at(-1)].map(withUnit))].join(" to ")}.`
          : `${name}: ${jobsText(jobs)}, median ${withUnit(median)}, middle 80 % from ${withUnit(low10)} to ${withUnit(high90)}.`,
      )
      .join(" ")}`,
    tableHead: ["Group", "Jobs", "10 %", "25 %", "Median", "75 %", "90 %"],
    tableRows: strips.map(({ name, jobs, quantiles }) => [
      name,
      jobs.toLocaleString("en-US"),
      ...quantiles.map(withUnit),
    ]),
  };
}

function drawStrip(
  strip: SpreadStrip,
  top: number,
  x: (value: number) => number,
  { least, most }: SpreadStripsInput,
): { readonly paths: readonly ChartPath[]; readonly marks: readonly ChartMark[] } {
  const base = top + STRIP - 10;
  const room = STRIP - 10 - NAME - 4;
  const [low10, low25, median, high75, high90] = strip.quantiles.map(x);
  if (
    low10 === undefined ||
    low25 === undefined ||
    median === undefined ||
    high75 === undefined ||
    high90 === undefined
  )
    return { paths: [], marks: [] };
  const step = (most - least) / strip.bins.length;
  const tallest = Math.max(...strip.bins, 1);
  const bars = strip.bins
    .map((jobs, bin) =>
      jobs === 0 || step === 0
        ? ""
        : rectangle(x(least + bin * step), base - (jobs / tallest) * room, x(least + (bin + 1) * step), base),
    )
    .join("");
  const quartiles = strip.jobs >= LEAST_FOR_QUARTILES;
  const rule = path(`rule-${top}`, `M${x(least)},${base}H${x(most)}`, "rule", { weight: 1 });
  return {
    paths: [
      ...(strip.values === null && bars !== "" ? [path(`bars-${top}`, bars, "a", { kind: "wash" })] : []),
      rule,
      ...(quartiles
        ? [
            path(`mid80-${top}`, `M${low10},${base}H${high90}`, "a", { weight: 2 }),
            path(`half-${top}`, `M${low25},${base}H${high75}`, "a", { weight: 6 }),
          ]
        : []),
    ],
    marks: [
      ...(strip.values ?? []).map(
        (value, index): ChartMark => ({
          key: `job-${top}-${index}`,
          x: x(value),
          // Equal values stand above one another.
          y: base - 9 - 4 * (index % 4),
          shape: "ring",
          tone: "a",
          text: "",
        }),
      ),
      ...(quartiles
        ? [
            {
              key: `median-${top}`,
              x: median,
              y: base,
              shape: "lozenge" as const,
              tone: "ink" as const,
              text: "",
            },
          ]
        : []),
    ],
  };
}

import { line } from "d3-shape";
import { type Axis, axisOver, xTicks, yTicks } from "./axes";
import {
  type ChartGeometry,
  type ChartLabel,
  type ChartPath,
  label,
  type Plot,
  path,
  type Tone,
} from "./geometry";
import { capital, numberText } from "./number-text";
import { spread } from "./spread";

export type CapacityPoint = { readonly airflowCfm: number; readonly capacityBtuh: number };

export type CapacityAgainstAirflowInput = {
  /** Total, sensible, latent: each a line over airflow, points in order of airflow. */
  readonly series: readonly {
    readonly key: string;
    readonly label: string;
    readonly tone: Tone;
    readonly dashes: ChartPath["dashes"];
    readonly points: readonly CapacityPoint[];
  }[];
  /** What the house needs, drawn level across. */
  readonly loads: readonly {
    readonly key: string;
    readonly label: string;
    readonly tone: Tone;
    readonly loadBtuh: number;
  }[];
  /** The airflow settings there are. The chosen one gets a mark on every line that has a point there. */
  readonly settings: readonly {
    readonly key: string;
    readonly label: string;
    readonly airflowCfm: number;
    readonly chosen: boolean;
  }[];
  readonly width: number;
};

const LABEL_GAP = 15;

/** Capacity over airflow against the load. `null` without a point. */
export function capacityAgainstAirflow(input: CapacityAgainstAirflowInput): ChartGeometry | null {
  const points = input.series.flatMap((series) => series.points);
  if (points.length === 0) return null;
  const height = input.width < 500 ? 300 : 340;
  const plot: Plot = { left: 56, top: 40, right: input.width - 86, bottom: height - 44 };
  const airflows = [...points, ...input.settings].map(({ airflowCfm }) => airflowCfm);
  const x = axisOver(
    airflows,
    [plot.left, plot.right],
    Math.max(2, Math.floor((plot.right - plot.left) / 70)),
  );
  const capacities = points.map(({ capacityBtuh }) => capacityBtuh);
  const y = axisOver(
    [0, ...capacities, ...input.loads.map(({ loadBtuh }) => loadBtuh)],
    [plot.bottom, plot.top],
    5,
  );
  const draw = line<CapacityPoint>()
    .x((point) => x.at(point.airflowCfm))
    .y((point) => y.at(point.capacityBtuh))
    .digits(1);
  const chosen = input.settings.filter((setting) => setting.chosen);
  const drawn = input.series.filter((series) => series.points.length > 0);
  const ends = drawn.map((series) => y.at(series.points.at(-1)?.capacityBtuh ?? 0));
  const endLabels = spread(ends, LABEL_GAP, plot.top, plot.bottom);

  return {
    width: input.width,
    height,
    paths: [
      ...input.loads.map((load) =>
        path(`load-${load.key}`, `M${plot.left},${y.at(load.loadBtuh)}H${plot.right}`, load.tone, {
          dashes: "dotted",
          weight: 1.5,
        }),
      ),
      ...chosen.map((setting) =>
        path(
          `setting-${setting.key}`,
          `M${x.at(setting.airflowCfm)},${plot.top - 8}V${plot.bottom}`,
          "accent",
          {
            weight: 1.5,
          },
        ),
      ),
      ...drawn
        .filter((series) => series.points.length > 1)
        .map((series) =>
          path(series.key, draw([...series.points]) ?? "", series.tone, {
            dashes: series.dashes,
            weight: 2.5,
          }),
        ),
    ],
    ticks: [...xTicks(x, plot), ...yTicks(y, plot)],
    labels: [
      label("x", plot.left, height - 6, "Airflow, cfm"),
      label("y", 4, 14, "Capacity, Btu/h"),
      ...drawn.map((series, index) =>
        label(series.key, plot.right + 7, (endLabels[index] ?? 0) + 4, series.label, {
          tone: series.tone,
          strong: true,
        }),
      ),
      ...input.loads.map((load) => loadLabel(load, drawn, y, plot)),
      ...chosen.map((setting) => {
        const at = x.at(setting.airflowCfm);
        const anchor = at > plot.right - 60 ? "end" : at < plot.left + 60 ? "start" : "middle";
        return label(`setting-${setting.key}`, at, plot.top - 13, setting.label, {
          anchor,
          tone: "accent",
          strong: true,
        });
      }),
    ],
    marks: [
      ...input.settings.map((setting) => ({
        key: `at-${setting.key}`,
        x: x.at(setting.airflowCfm),
        y: plot.bottom,
        shape: setting.chosen ? ("wedge" as const) : ("ring" as const),
        tone: "accent" as const,
        text: setting.label,
      })),
      ...chosen.flatMap((setting) =>
        drawn.flatMap((series) =>
          series.points
            .filter((point) => point.airflowCfm === setting.airflowCfm)
            .map((point) => ({
              key: `${series.key}-${setting.key}`,
              x: x.at(point.airflowCfm),
              y: y.at(point.capacityBtuh),
              shape: "lozenge" as const,
              tone: series.tone,
              text: `${series.label} ${numberText(point.capacityBtuh, 0)} Btu/h`,
            })),
        ),
      ),
    ],
    textAlternative: words(input),
    tableHead: ["Airflow, cfm", ...drawn.map((series) => `${series.label}, Btu/h`)],
    tableRows: rows(drawn),
  };
}

/** Above its line, at the end of the plot where the nearest capacity is farther off. */
function loadLabel(
  load: CapacityAgainstAirflowInput["loads"][number],
  drawn: CapacityAgainstAirflowInput["series"],
  y: Axis,
  plot: Plot,
): ChartLabel {
  const height = y.at(load.loadBtuh) - 5;
  const room = (index: 0 | -1) =>
    Math.min(...drawn.map(({ points }) => Math.abs(y.at(points.at(index)?.capacityBtuh ?? 0) - height)));
  const isLeft = room(0) >= room(-1);
  return label(`load-${load.key}`, isLeft ? plot.left + 5 : plot.right - 5, height, load.label, {
    anchor: isLeft ? "start" : "end",
    tone: load.tone,
  });
}

function rows(series: CapacityAgainstAirflowInput["series"]): readonly (readonly string[])[] {
  const airflows = [...new Set(series.flatMap(({ points }) => points.map(({ airflowCfm }) => airflowCfm)))];
  return airflows
    .sort((a, b) => a - b)
    .map((cfm) => [
      numberText(cfm, 0),
      ...series.map(({ points }) => {
        const point = points.find(({ airflowCfm }) => airflowCfm === cfm);
        return point === undefined ? "not computed" : numberText(point.capacityBtuh, 0);
      }),
    ]);
}

function words(input: CapacityAgainstAirflowInput): string {
  const ranges = input.series.flatMap(({ label: name, points }) => {
    const first = points[0];
    const last = points.at(-1);
    if (first === undefined || last === undefined) return [];
    return `${name} from ${numberText(first.capacityBtuh, 0)} Btu/h at ${numberText(first.airflowCfm, 0)} cfm to ${numberText(last.capacityBtuh, 0)} Btu/h at ${numberText(last.airflowCfm, 0)} cfm`;
  });
  const loads = input.loads.map(({ label: name, loadBtuh }) => `${name} ${numberText(loadBtuh, 0)} Btu/h`);
  const chosen = input.settings
    .filter((setting) => setting.chosen)
    .map((setting) => `${setting.label} at ${numberText(setting.airflowCfm, 0)} cfm`);
  return [
    `${capital(ranges.join("; "))}.`,
    loads.length === 0 ? "" : `Loads: ${loads.join("; ")}.`,
    chosen.length === 0 ? "" : `Chosen: ${chosen.join("; ")}.`,
  ]
    .filter((part) => part !== "")
    .join(" ");
}

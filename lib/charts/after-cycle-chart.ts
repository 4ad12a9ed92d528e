import { axisOver, xTicks, yTicks } from "./axes";
import { type ChartGeometry, label, type Plot, path } from "./geometry";
import { drawSegments, type Point, segments } from "./segments";

export type AfterCycleInput = {
  readonly width: number;
  readonly points: readonly {
    readonly minutes: number;
    readonly fanOnGrainsPerLb: number | null;
    readonly fanOnRuns: number;
    readonly fanOffGrainsPerLb: number | null;
    readonly fanOffRuns: number;
  }[];
};

/** How indoor moisture moves after a cooling run ends, with the fan running on and with it off. */
export function afterCycleChart({ width, points }: AfterCycleInput): ChartGeometry | null {
  const values = points.flatMap(({ fanOnGrainsPerLb: on, fanOffGrainsPerLb: off }) =>
    [on, off].filter((one) => one !== null),
  );
  if (values.length === 0) return null;
  const plot: Plot = { left: 44, top: 44, right: width - 14, bottom: 224 };
  const x = axisOver([0, ...points.map(({ minutes }) => minutes)], [plot.left, plot.right], 6);
  const y = axisOver([0, ...values], [plot.bottom, plot.top], 5);
  const at = ([minutes, grains]: Point): Point => [x.at(minutes), y.at(grains)];
  const draw = (key: "fanOnGrainsPerLb" | "fanOffGrainsPerLb", tone: "b" | "a", dashes: "solid" | "dashed") =>
    drawSegments(
      segments(
        points.map((point) => [point.minutes, point[key]] as const),
        1_000,
      ),
      at,
      { key, tone, dashes },
    );
  const [on, off] = [draw("fanOnGrainsPerLb", "b", "solid"), draw("fanOffGrainsPerLb", "a", "dashed")];
  const said = (name: string, key: "fanOn" | "fanOff") => {
    const quarter = points.findLast(({ minutes }) => minutes <= 15);
    const [value, runs] = [quarter?.[`${key}GrainsPerLb`] ?? null, quarter?.[`${key}Runs`] ?? 0];
    return value === null
      ? `no run with the fan ${name}`
      : `${value.toFixed(1)} gr/lb in 15 min with the fan ${name} (${runs} runs)`;
  };
  return {
    width,
    height: plot.bottom + 44,
    paths: [
      path("zero", `M${plot.left},${y.at(0)}H${plot.right}`, "muted", { weight: 1 }),
      ...on.paths,
      ...off.paths,
    ],
    ticks: [...xTicks(x, plot), ...yTicks(y, plot)],
    labels: [
      label("y", 4, 14, "Indoor moisture since the end of the run, gr/lb"),
      label("key", 4, 32, "fan on solid, fan off dashed"),
      label("x", plot.right, plot.bottom + 36, "minutes since the run ended", { anchor: "end" }),
    ],
    marks: [...on.marks, ...off.marks],
    textAlternative: `Moisture moves ${said("on", "fanOn")}; ${said("off", "fanOff")}.`,
    tableHead: ["Minutes", "Fan on, gr/lb", "Runs", "Fan off, gr/lb", "Runs"],
    tableRows: points.map((point) => [
      point.minutes.toFixed(0),
      point.fanOnGrainsPerLb?.toFixed(2) ?? "–",
      String(point.fanOnRuns),
      point.fanOffGrainsPerLb?.toFixed(2) ?? "–",
      String(point.fanOffRuns),
    ]),
  };
}

import { line } from "d3-shape";
import { type Axis, axisOver, xTicks, yTicks } from "./axes";
import { clipped, cornerBetween } from "./clip";
import { type ChartGeometry, type ChartLabel, type ChartPath, label, type Plot, path } from "./geometry";
import { capital, numberText } from "./number-text";
import type { AirPoint, PsychrometricChartInput } from "./psychrometric-input";

/** Dry bulb against moisture content. `null` without a state, since there is nothing to place. */
export function psychrometricChart(input: PsychrometricChartInput): ChartGeometry | null {
  if (input.states.length === 0) return null;
  const height = Math.round(Math.min(430, Math.max(290, input.width * 0.58)));
  const plot: Plot = { left: 14, top: 26, right: input.width - 46, bottom: height - 44 };
  const placed = [...input.states, ...input.coilPath];
  const x = axisOver(
    placed.flatMap(({ dryBulbF }) => [dryBulbF - 6, dryBulbF + 6]),
    [plot.left, plot.right],
    6,
  );
  const y = axisOver([0, ...placed.map(({ grainsPerLb }) => grainsPerLb * 1.15)], [plot.bottom, plot.top], 5);
  const inside = (points: readonly AirPoint[]) => clipped(points, x.domain, y.domain);
  const draw = line<AirPoint>()
    .x((point) => x.at(point.dryBulbF))
    .y((point) => y.at(point.grainsPerLb))
    .digits(1);
  const curves = input.humidityCurves.map((curve) => ({ ...curve, points: inside(curve.points) }));
  const saturation = curves.find((curve) => curve.relativeHumidityPercent === 100)?.points ?? [];
  // Where the saturation curve leaves through the top and the limit through the side, the area turns at the corner.
  const corner = cornerBetween(saturation.at(-1), x.domain[1], y.domain[1]);

  return {
    width: input.width,
    height,
    paths: [
      ...limitPaths(input, inside, saturation, corner, draw),
      ...curvePaths(curves, draw),
      ...coilPaths(input, draw),
    ],
    ticks: [...xTicks(x, plot), ...yTicks(y, plot, "y2")],
    labels: [
      label("x", plot.left, height - 6, "Dry bulb, °F"),
      label("y", input.width - 4, 14, "Moisture content, gr/lb", { anchor: "end" }),
      ...curveLabels(curves, x, y, plot),
      ...input.states.map((state) => stateLabel(state, x.at(state.dryBulbF), y.at(state.grainsPerLb), plot)),
    ],
    marks: input.states.map(({ key, dryBulbF, grainsPerLb, shape, tone, label: text }) => ({
      key,
      x: x.at(dryBulbF),
      y: y.at(grainsPerLb),
      shape,
      tone,
      text,
    })),
    textAlternative: words(input),
    tableHead: ["State", "Dry bulb, °F", "Moisture content, gr/lb"],
    tableRows: input.states.map((state) => [
      state.label,
      numberText(state.dryBulbF, 1),
      numberText(state.grainsPerLb, 1),
    ]),
  };
}

function curvePaths(
  curves: PsychrometricChartInput["humidityCurves"],
  draw: (points: AirPoint[]) => string | null,
): readonly ChartPath[] {
  return curves
    .filter(({ points }) => points.length > 1)
    .map(({ relativeHumidityPercent: percent, points }) =>
      path(`curve-${percent}`, draw([...points]) ?? "", percent === 100 ? "ink" : "muted", {
        weight: percent === 100 ? 2 : 0.75,
        dashes: "solid",
      }),
    );
}

/** At each curve's end; left out where it would touch one already placed. */
function curveLabels(
  curves: PsychrometricChartInput["humidityCurves"],
  x: Axis,
  y: Axis,
  plot: Plot,
): readonly ChartLabel[] {
  const placed: ChartLabel[] = [];
  for (const { relativeHumidityPercent: percent, points } of [...curves].reverse()) {
    const end = points.at(-1);
    if (end === undefined || points.length < 2) continue;
    const at = { x: x.at(end.dryBulbF) - 3, y: Math.max(y.at(end.grainsPerLb) - 4, plot.top + 11) };
    const isFree = placed.every((other) => Math.abs(other.x - at.x) > 38 || Math.abs(other.y - at.y) > 13);
    if (isFree) placed.push(label(`rh-${percent}`, at.x, at.y, `${percent} %`, { anchor: "end" }));
  }
  return placed;
}

/** The limit's curve, and the air between it and saturation. There is no air beyond saturation to shade. */
function limitPaths(
  { limit }: PsychrometricChartInput,
  inside: (points: readonly AirPoint[]) => readonly AirPoint[],
  saturation: readonly AirPoint[],
  corner: AirPoint,
  draw: (points: AirPoint[]) => string | null,
): readonly ChartPath[] {
  const points = limit === null ? [] : inside(limit.points);
  if (points.length < 2) return [];
  const line = path("limit", draw([...points]) ?? "", "short", { dashes: "dashed", weight: 1.5 });
  if (saturation.length < 2) return [line];
  const area = draw([...saturation, corner, ...[...points].reverse()]);
  return [path("limit-above", `${area ?? ""}Z`, "short", { kind: "wash" }), line];
}

function coilPaths(
  { coilPath }: PsychrometricChartInput,
  draw: (points: AirPoint[]) => string | null,
): readonly ChartPath[] {
  return coilPath.length < 2 ? [] : [path("coil", draw([...coilPath]) ?? "", "accent", { weight: 3 })];
}

/** Beside its mark, on the side that has room. */
function stateLabel(
  state: PsychrometricChartInput["states"][number],
  x: number,
  y: number,
  plot: Plot,
): ChartLabel {
  const atRight = x > plot.left + (plot.right - plot.left) * 0.62;
  return label(state.key, atRight ? x - 9 : x + 9, y - 7, state.label, {
    anchor: atRight ? "end" : "start",
    tone: "ink",
    strong: true,
  });
}

function words(input: PsychrometricChartInput): string {
  const states = input.states.map(
    ({ label: name, dryBulbF, grainsPerLb }) =>
      `${name} at ${numberText(dryBulbF, 1)} °F and ${numberText(grainsPerLb, 1)} gr/lb`,
  );
  const coil = input.coilPath.length < 2 ? "" : " A line shows the air's way through the coil.";
  const limit = input.limit === null ? "" : ` Air above ${input.limit.label} is shaded.`;
  return `${capital(states.join("; "))}.${coil}${limit}`;
}

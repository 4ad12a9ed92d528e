import { line } from "d3-shape";
import { axisOver, xTicks, yTicks } from "./axes";
import { type ChartGeometry, label, type Plot, path, type Tone } from "./geometry";
import { numberText } from "./number-text";
import { spread } from "./spread";

type Point = { readonly airflowCfm: number; readonly externalStaticInWc: number };

type FanCurve = { readonly name: string; readonly chosen: boolean; readonly points: readonly Point[] };

/** Room for a letter of a name, and between two names, px. */
const LETTER = 6.5;
const BETWEEN_NAMES = 8;

export type DuctCurveInput = {
  /** One curve a setting, points in order of static. */
  readonly settings: readonly FanCurve[];
  /** The ducts' curve: static asked at each airflow. */
  readonly ducts: readonly {
    readonly key: string;
    readonly label: string;
    readonly tone: Tone;
    readonly dashes: "solid" | "dashed" | "dotted";
    readonly points: readonly Point[];
  }[];
  readonly meets: readonly (Point & {
    readonly setting: string;
    readonly ducts: string;
    readonly chosen: boolean;
    readonly powerW: number | null;
  })[];
  /** What cannot be drawn, in words: a setting whose meeting point lies off the table. */
  readonly remarks: readonly string[];
  readonly limit: { readonly label: string; readonly inWc: number } | null;
  readonly width: number;
};

/** Airflow across, static up: fan curves fall to the right, duct curves rise. `null` without a fan curve. */
export function ductCurve(input: DuctCurveInput): ChartGeometry | null {
  const curves = input.settings.filter(({ points }) => points.length > 1);
  if (curves.length === 0) return null;
  const height = input.width < 500 ? 320 : 360;
  const plot: Plot = { left: 52, top: 34, right: input.width - 84, bottom: height - 44 };
  const all = [...[...curves, ...input.ducts].flatMap(({ points }) => points), ...input.meets];
  const x = axisOver(
    all.map(({ airflowCfm }) => airflowCfm),
    [plot.left, plot.right],
    Math.max(2, Math.floor((plot.right - plot.left) / 70)),
  );
  const y = axisOver(
    [
      0,
      ...all.map(({ externalStaticInWc }) => externalStaticInWc),
      ...(input.limit ? [input.limit.inWc] : []),
    ],
    [plot.bottom, plot.top],
    5,
  );
  const draw = line<Point>()
    .x((point) => x.at(point.airflowCfm))
    .y((point) => y.at(point.externalStaticInWc))
    .digits(1);
  const ducts = input.ducts.filter(({ points }) => points.length > 1);
  const ends = spread(
    ducts.map(({ points }) => y.at(points.at(-1)?.externalStaticInWc ?? 0)),
    15,
    plot.top,
    plot.bottom,
  );
  // The names of steep curves side by side would stand in each other, so they are spread.
  const nameGap = BETWEEN_NAMES + LETTER * Math.max(...curves.map(({ name }) => name.length));
  const nameLefts = spread(
    curves.map(({ points: [foot] }) => x.at(foot?.airflowCfm ?? 0)),
    nameGap,
    plot.left + nameGap / 2,
    plot.right - nameGap / 2,
  );
  return {
    width: input.width,
    height,
    paths: [
      ...(input.limit
        ? [
            path("limit", `M${plot.left},${y.at(input.limit.inWc)}H${plot.right}`, "short", {
              dashes: "dotted",
              weight: 1.5,
            }),
          ]
        : []),
      ...curves.map(({ name, chosen, points }) =>
        path(`fan-${name}`, draw([...points]) ?? "", chosen ? "accent" : "muted", {
          weight: chosen ? 2.5 : 1.5,
        }),
      ),
      ...ducts.map(({ key, tone, dashes, points }) =>
        path(`ducts-${key}`, draw([...points]) ?? "", tone, { dashes, weight: 2 }),
      ),
    ],
    ticks: [...xTicks(x, plot), ...yTicks(y, plot)],
    labels: [
      label("x", plot.left, height - 6, "Airflow, cfm"),
      label("y", 4, 14, "External static, in. w.c."),
      ...(input.limit
        ? [label("limit", plot.left + 5, y.at(input.limit.inWc) - 5, input.limit.label, { tone: "short" })]
        : []),
      ...curves.map(({ name, chosen, points: [foot] }, index) =>
        label(
          `fan-${name}`,
          nameLefts[index] ?? 0,
          Math.min(plot.bottom - 4, y.at(foot?.externalStaticInWc ?? 0) + 15),
          name,
          { anchor: "middle", tone: chosen ? "accent" : "muted", strong: chosen },
        ),
      ),
      ...ducts.map((one, index) =>
        label(`ducts-${one.key}`, plot.right + 6, (ends[index] ?? 0) + 4, one.label, {
          tone: one.tone,
          strong: true,
        }),
      ),
    ],
    marks: input.meets.map((meet) => ({
      key: `${meet.setting}-${meet.ducts}`,
      x: x.at(meet.airflowCfm),
      y: y.at(meet.externalStaticInWc),
      shape: meet.chosen ? ("lozenge" as const) : ("ring" as const),
      tone: meet.chosen ? ("accent" as const) : ("muted" as const),
      text: `${meet.setting}, ${meet.ducts}: ${numberText(meet.airflowCfm, 0)} cfm at ${numberText(meet.externalStaticInWc, 2)} in. w.c.`,
    })),
    textAlternative: words(input),
    tableHead: ["Setting", "Ducts", "Airflow, cfm", "External static, in. w.c.", "Fan power, W"],
    tableRows:
      input.meets.length > 0
        ? input.meets.map((meet) => [
            meet.setting,
            meet.ducts,
            numberText(meet.airflowCfm, 0),
            numberText(meet.externalStaticInWc, 2),
            meet.powerW === null ? "not published" : numberText(meet.powerW, 0),
          ])
        : curves.flatMap(({ name, points }) =>
            points.map((point) => [
              name,
              "maker's line",
              numberText(point.airflowCfm, 0),
              numberText(point.externalStaticInWc, 2),
              "see the table",
            ]),
          ),
  };
}

function words({ settings, meets, remarks }: DuctCurveInput): string {
  const chosen = meets.filter((meet) => meet.chosen);
  const points = (chosen.length > 0 ? chosen : meets).map(
    (meet) =>
      `setting ${meet.setting} moves ${numberText(meet.airflowCfm, 0)} cfm against ${numberText(meet.externalStaticInWc, 2)} in. w.c. (${meet.ducts})`,
  );
  const first =
    points.length === 0
      ? `Fan curves of ${settings.map(({ name }) => name).join(", ")}.`
      : `On these ducts ${points.join("; ")}.`;
  return [first, ...remarks].join(" ");
}

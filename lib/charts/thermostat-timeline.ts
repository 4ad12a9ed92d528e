import { type ScaleLinear, scaleLinear } from "d3-scale";
import { curveStepAfter, line } from "d3-shape";
import { axisOver, yTicks } from "./axes";
import { type ChartGeometry, type ChartPath, label, type Plot, path, rectangle } from "./geometry";
import { numberText } from "./number-text";
import { drawSegments, type Point, segments } from "./segments";

export type TimelineStage = "fan only" | "first stage" | "second stage";

export type ThermostatTimelineInput = {
  /** Minutes from the start of the picture, in order; `null` is a gap. */
  readonly roomF: readonly { readonly atMin: number; readonly dryBulbF: number | null }[];
  /** The setpoint holds from each entry to the next, the last to the end. */
  readonly setpointF: readonly { readonly atMin: number; readonly setpointF: number }[];
  /** What ran when; between the runs everything rests. */
  readonly runs: readonly {
    readonly fromMin: number;
    readonly toMin: number;
    readonly stage: TimelineStage;
  }[];
  readonly endMin: number;
  /** The picture begins at midnight: its foot shows the clock instead of minutes. */
  readonly isDay?: boolean;
  readonly gapAfterMin: number;
  readonly width: number;
};

/** A stage is told by the height of its bar, not by its colour alone. */
const STAGE_SHARE: Readonly<Record<TimelineStage, number>> = {
  "fan only": 0.18,
  "first stage": 0.55,
  "second stage": 1,
};
const STAGES = ["fan only", "first stage", "second stage"] as const;
const ROOM_HEIGHT = 170;
const STAGE_HEIGHT = 74;

/** Room temperature against setpoint, and below it what ran. `null` without a temperature. */
export function thermostatTimeline(input: ThermostatTimelineInput): ChartGeometry | null {
  const room = input.roomF.map(({ atMin, dryBulbF }) => [atMin, dryBulbF] as const);
  const temperatures = room.flatMap(([, f]) => (f === null ? [] : [f]));
  if (temperatures.length === 0) return null;
  const plot: Plot = { left: 44, top: 28, right: input.width - 74, bottom: 28 + ROOM_HEIGHT };
  const lower: Plot = { ...plot, top: plot.bottom + 16, bottom: plot.bottom + 16 + STAGE_HEIGHT };
  const x = scaleLinear().domain([0, input.endMin]).range([plot.left, plot.right]);
  const setpoints = input.setpointF.map(({ setpointF }) => setpointF);
  const y = axisOver([...temperatures, ...setpoints], [plot.bottom, plot.top], 4);
  const at = ([minute, f]: Point): Point => [x(minute), y.at(f)];
  const drawn = drawSegments(segments(room, input.gapAfterMin), at, { key: "room", tone: "a" });

  return {
    width: input.width,
    height: lower.bottom + 44,
    paths: [...setpointPath(input, x, y.at), ...drawn.paths, ...runPaths(input, x, lower)],
    ticks: [
      ...yTicks(y, plot),
      ...tickMinutes(input, x).map((minute) => ({
        axis: "x" as const,
        at: x(minute),
        text: timeText(input, minute),
        guide: [x(minute), plot.top, x(minute), lower.bottom] as const,
      })),
    ],
    labels: [
      label("y", 4, 14, "Room, °F"),
      label("x", plot.left, lower.bottom + 38, input.isDay ? "Clock" : "Minutes"),
      ...input.setpointF
        .slice(-1)
        .map(({ setpointF }) =>
          label("setpoint", plot.right + 6, y.at(setpointF) + 4, "setpoint", { tone: "b" }),
        ),
      ...STAGES.map((stage) =>
        label(stage, plot.right + 6, lower.bottom - STAGE_SHARE[stage] * STAGE_HEIGHT + 9, stage),
      ),
    ],
    marks: drawn.marks,
    textAlternative: words(input, temperatures),
    tableHead: input.isDay ? ["From", "To", "What ran"] : ["From, min", "To, min", "What ran"],
    tableRows: input.runs.map((run) => [timeText(input, run.fromMin), timeText(input, run.toMin), run.stage]),
  };
}

function tickMinutes(input: ThermostatTimelineInput, x: ScaleLinear<number, number>): readonly number[] {
  if (!input.isDay) return x.ticks(Math.max(2, Math.floor(input.width / 90)));
  const every = input.width < 500 ? 360 : 180;
  return Array.from({ length: Math.floor(input.endMin / every) + 1 }, (_, place) => place * every);
}

function timeText({ isDay }: ThermostatTimelineInput, minute: number): string {
  if (!isDay) return numberText(minute, 0);
  return `${Math.floor(minute / 60)}:${String(minute % 60).padStart(2, "0")}`;
}

function setpointPath(
  input: ThermostatTimelineInput,
  x: (minute: number) => number,
  y: (f: number) => number,
): readonly ChartPath[] {
  const last = input.setpointF.at(-1);
  if (last === undefined) return [];
  const steps = [...input.setpointF, { atMin: input.endMin, setpointF: last.setpointF }];
  const draw = line<(typeof steps)[number]>()
    .x((step) => x(step.atMin))
    .y((step) => y(step.setpointF))
    .curve(curveStepAfter)
    .digits(1);
  return [path("setpoint", draw(steps) ?? "", "b", { dashes: "dashed", weight: 1.5 })];
}

function runPaths(
  input: ThermostatTimelineInput,
  x: (minute: number) => number,
  plot: Plot,
): readonly ChartPath[] {
  const bars = input.runs.map((run, index) => {
    const top = plot.bottom - STAGE_SHARE[run.stage] * (plot.bottom - plot.top);
    const tone = run.stage === "fan only" ? "muted" : run.stage === "first stage" ? "c" : "d";
    return path(`run-${index}`, rectangle(x(run.fromMin), top, x(run.toMin), plot.bottom), tone, {
      kind: "solid",
    });
  });
  return [...bars, path("rest", `M${plot.left},${plot.bottom}H${plot.right}`, "muted", { weight: 1 })];
}

function words(input: ThermostatTimelineInput, temperatures: readonly number[]): string {
  const low = numberText(Math.min(...temperatures), 1);
  const high = numberText(Math.max(...temperatures), 1);
  const counts = STAGES.map((stage) => {
    const runs = input.runs.filter((run) => run.stage === stage).length;
    return `${stage} ${runs} ${runs === 1 ? "time" : "times"}`;
  });
  const span = input.isDay ? "From midnight to midnight" : `Over ${numberText(input.endMin, 0)} minutes`;
  return `${span} the room lay between ${low} °F and ${high} °F. Ran: ${counts.join(", ")}.`;
}

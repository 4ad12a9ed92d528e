import type { ChartGeometry, ChartLabel, ChartMark, ChartPath, ChartTick } from "@/lib/charts/geometry";
import { MARK_PATHS } from "@/lib/charts/marks";
import { cx } from "../ui/cx";

const DASHES = { solid: undefined, dashed: "6 4", dotted: "1.5 3" } as const;

/** The picture alone. Its words stand beside it, in `ChartFigure`. */
export function ChartDrawing({
  geometry,
  name,
  className,
}: {
  readonly geometry: ChartGeometry;
  readonly name: string;
  readonly className?: string;
}) {
  const { width, height, ticks, paths, marks, labels } = geometry;
  return (
    <svg
      role="img"
      aria-label={name}
      viewBox={`0 0 ${width} ${height}`}
      className={cx("chart-drawing", className)}
    >
      {ticks.map((tick) => (
        <Tick key={`${tick.axis} ${tick.at}`} tick={tick} />
      ))}
      {paths.map((path) => (
        <DrawnPath key={path.key} path={path} />
      ))}
      {marks.map((mark) => (
        <Mark key={mark.key} mark={mark} />
      ))}
      {labels.map((label) => (
        <Label key={label.key} label={label} />
      ))}
    </svg>
  );
}

function Tick({ tick }: { readonly tick: ChartTick }) {
  const [x1, y1, x2, y2] = tick.guide;
  return (
    <g>
      <line x1={x1} y1={y1} x2={x2} y2={y2} className="chart-guide" />
      {tick.axis === "x" ? (
        <text x={tick.at} y={Math.max(y1, y2) + 16} textAnchor="middle">
          {tick.text}
        </text>
      ) : (
        <text
          x={tick.axis === "y" ? x1 - 6 : x2 + 6}
          y={tick.at + 4}
          textAnchor={tick.axis === "y" ? "end" : "start"}
        >
          {tick.text}
        </text>
      )}
    </g>
  );
}

function DrawnPath({ path }: { readonly path: ChartPath }) {
  return (
    <path
      d={path.d}
      className={cx(`tone-${path.tone}`, `chart-${path.kind}`)}
      strokeWidth={path.kind === "line" ? path.weight : undefined}
      strokeDasharray={DASHES[path.dashes]}
    />
  );
}

function Mark({ mark }: { readonly mark: ChartMark }) {
  return (
    <path
      d={MARK_PATHS[mark.shape]}
      transform={`translate(${mark.x} ${mark.y})`}
      className={cx(`tone-${mark.tone}`, "chart-mark", mark.shape === "ring" && "chart-ring")}
    >
      <title>{mark.text}</title>
    </path>
  );
}

function Label({ label }: { readonly label: ChartLabel }) {
  return (
    <text
      x={label.x}
      y={label.y}
      textAnchor={label.anchor}
      className={cx(`tone-${label.tone}`, "chart-label", label.strong && "chart-strong")}
    >
      {label.text}
    </text>
  );
}

import { Circle, G, Line, Path, Rect, Svg, Text, View } from "@react-pdf/renderer";
import type { ChartGeometry, ChartMark, ChartPath, ChartTick } from "@/lib/charts/geometry";
import { PAPER_PALETTE } from "@/lib/charts/palette";
import { FAMILY, REGULAR, STRONG } from "../fonts";
import { small } from "../look";
import { tagged } from "./tags";

const DASHES = { solid: undefined, dashed: "6 4", dotted: "1.5 3" } as const;
const TEXT = { fontFamily: FAMILY, fontSize: 11 } as const;

/** A chart as on screen, with its sentences below. */
export function PaperChart({ chart }: { readonly chart: ChartGeometry }) {
  return (
    <View wrap={false} style={{ marginTop: 4, marginBottom: 12 }}>
      <Svg
        {...tagged("Figure", chart.textAlternative)}
        viewBox={`0 0 ${chart.width} ${chart.height}`}
        style={{ width: "100%" }}
      >
        {chart.ticks.map((tick) => (
          <Tick key={`${tick.axis} ${tick.at} ${tick.guide[1]}`} tick={tick} />
        ))}
        {chart.paths.map((path) => (
          <ChartLine key={path.key} path={path} />
        ))}
        {chart.marks.map((mark) => (
          <Mark key={mark.key} mark={mark} />
        ))}
        {chart.labels.map(({ key, x, y, text, anchor, tone, strong }) => (
          <Text
            key={key}
            x={x}
            y={y}
            textAnchor={anchor}
            fill={PAPER_PALETTE[tone]}
            style={{ ...TEXT, fontWeight: strong ? STRONG : REGULAR }}
          >
            {text}
          </Text>
        ))}
      </Svg>
      <Text style={{ ...small, marginTop: 4 }}>{chart.textAlternative}</Text>
    </View>
  );
}

function ChartLine({ path }: { readonly path: ChartPath }) {
  const color = PAPER_PALETTE[path.tone];
  if (path.kind === "line") {
    return (
      <Path
        d={path.d}
        stroke={color}
        strokeWidth={path.weight}
        strokeDasharray={DASHES[path.dashes]}
        fill="none"
      />
    );
  }
  return <Path d={path.d} fill={color} fillOpacity={path.kind === "wash" ? 0.16 : 1} />;
}

/** A guide line and its number outside the plot: below it, or left or right of it. */
function Tick({ tick }: { readonly tick: ChartTick }) {
  const [x1, y1, x2, y2] = tick.guide;
  const outside = {
    x: { x: tick.at, y: y2, move: "translate(0, 15)", anchor: "middle" },
    y: { x: x1, y: tick.at, move: "translate(-6, 4)", anchor: "end" },
    y2: { x: x2, y: tick.at, move: "translate(6, 4)", anchor: "start" },
  } as const;
  const { x, y, move, anchor } = outside[tick.axis];
  return (
    <>
      <Line x1={x1} y1={y1} x2={x2} y2={y2} stroke={PAPER_PALETTE.rule} strokeWidth={1} />
      <G transform={move}>
        <Text x={x} y={y} textAnchor={anchor} fill={PAPER_PALETTE.muted} style={TEXT}>
          {tick.text}
        </Text>
      </G>
    </>
  );
}

function Mark({ mark }: { readonly mark: ChartMark }) {
  const color = PAPER_PALETTE[mark.tone];
  return (
    <G transform={`translate(${mark.x}, ${mark.y})`}>
      {mark.shape === "dot" && <Circle cx={0} cy={0} r={4} fill={color} />}
      {mark.shape === "ring" && (
        <Circle cx={0} cy={0} r={4} fill="#ffffff" stroke={color} strokeWidth={1.8} />
      )}
      {mark.shape === "square" && <Rect x={-4} y={-4} width={8} height={8} fill={color} />}
      {mark.shape === "lozenge" && <Path d="M0 -5.5l5 5.5l-5 5.5l-5 -5.5z" fill={color} />}
      {mark.shape === "wedge" && <Path d="M-5 -4.5h10l-5 9.5z" fill={color} />}
    </G>
  );
}

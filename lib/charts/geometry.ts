/** Chart geometry as plain data: drawn once for the screen's SVG and once for paper. */

/** What a thing on a chart stands for; each tone has a colour in `palette.ts` and in `app/globals.css`. */
export const TONES = [
  "ink",
  "muted",
  "rule",
  "accent",
  "a",
  "b",
  "c",
  "d",
  "meets",
  "short",
  "unsure",
] as const;
export type Tone = (typeof TONES)[number];

export type ChartPath = {
  readonly key: string;
  /** SVG path data in the chart's own units. */
  readonly d: string;
  /** `line` is stroked, `solid` filled, `wash` filled thinly so that lines show through. */
  readonly kind: "line" | "solid" | "wash";
  readonly tone: Tone;
  readonly dashes: "solid" | "dashed" | "dotted";
  readonly weight: number;
};

export type ChartTick = {
  readonly axis: "x" | "y" | "y2";
  /** Position along the axis in the chart's units. */
  readonly at: number;
  readonly text: string;
  /** The two ends of its guide line. */
  readonly guide: readonly [x1: number, y1: number, x2: number, y2: number];
};

export type ChartLabel = {
  readonly key: string;
  readonly x: number;
  readonly y: number;
  readonly text: string;
  readonly anchor: "start" | "middle" | "end";
  readonly tone: Tone;
  readonly strong: boolean;
};

export type MarkShape = "dot" | "ring" | "square" | "lozenge" | "wedge";
export type ChartMark = {
  readonly key: string;
  readonly x: number;
  readonly y: number;
  readonly shape: MarkShape;
  readonly tone: Tone;
  readonly text: string;
};

export type ChartGeometry = {
  readonly width: number;
  readonly height: number;
  readonly paths: readonly ChartPath[];
  readonly ticks: readonly ChartTick[];
  readonly labels: readonly ChartLabel[];
  readonly marks: readonly ChartMark[];
  /** What the picture shows, in sentences. */
  readonly textAlternative: string;
  readonly tableHead: readonly string[];
  readonly tableRows: readonly (readonly string[])[];
};

/** The rectangle inside the axes. */
export type Plot = {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
};

export function path(
  key: string,
  d: string,
  tone: Tone,
  look: Partial<Pick<ChartPath, "kind" | "dashes" | "weight">> = {},
): ChartPath {
  return {
    key,
    d,
    tone,
    kind: look.kind ?? "line",
    dashes: look.dashes ?? "solid",
    weight: look.weight ?? 2,
  };
}

export function label(
  key: string,
  x: number,
  y: number,
  text: string,
  look: Partial<Pick<ChartLabel, "anchor" | "tone" | "strong">> = {},
): ChartLabel {
  return {
    key,
    x,
    y,
    text,
    anchor: look.anchor ?? "start",
    tone: look.tone ?? "muted",
    strong: look.strong ?? false,
  };
}

/** A rectangle as path data. */
export function rectangle(left: number, top: number, right: number, bottom: number): string {
  return `M${left},${top}H${right}V${bottom}H${left}Z`;
}

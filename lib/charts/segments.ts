import { line } from "d3-shape";
import { type ChartMark, type ChartPath, path, type Tone } from "./geometry";

export type Point = readonly [x: number, y: number];

/**
 * Cuts a series into stretches without a gap. A gap is a missing value, or more time between two readings
 * than `gapAfter` (same unit as x). No line is ever drawn across one.
 */
export function segments(
  points: readonly (readonly [x: number, y: number | null])[],
  gapAfter: number,
): readonly (readonly Point[])[] {
  const found: Point[][] = [];
  let current: Point[] = [];
  for (const [x, y] of points) {
    const last = current.at(-1);
    if (last !== undefined && (y === null || x - last[0] > gapAfter)) {
      found.push(current);
      current = [];
    }
    if (y !== null) current.push([x, y]);
  }
  if (current.length > 0) found.push(current);
  return found;
}

/** One path a stretch. A reading that stands alone has no length and becomes a mark instead. */
export function drawSegments(
  stretches: readonly (readonly Point[])[],
  at: (point: Point) => Point,
  look: {
    readonly key: string;
    readonly tone: Tone;
    readonly dashes?: ChartPath["dashes"];
    readonly weight?: number;
  },
): { readonly paths: readonly ChartPath[]; readonly marks: readonly ChartMark[] } {
  const draw = line<Point>()
    .x((point) => at(point)[0])
    .y((point) => at(point)[1])
    .digits(1);
  const paths: ChartPath[] = [];
  const marks: ChartMark[] = [];
  stretches.forEach((stretch, index) => {
    const first = stretch[0];
    if (first === undefined) return;
    const key = `${look.key}-${index}`;
    if (stretch.length === 1) {
      const [x, y] = at(first);
      marks.push({ key, x, y, shape: "dot", tone: look.tone, text: "a single reading" });
      return;
    }
    const { tone, dashes = "solid", weight = 2 } = look;
    paths.push(path(key, draw(stretch) ?? "", tone, { dashes, weight }));
  });
  return { paths, marks };
}

/**
 * Keeps, of the points that share one column of pixels, the first, lowest, highest and last: the line looks the
 * same and no peak is lost.
 */
export function thinToPixels(stretch: readonly Point[], pixelOf: (x: number) => number): readonly Point[] {
  const kept: Point[] = [];
  let column: Point[] = [];
  const flush = () => {
    if (column.length <= 4) kept.push(...column);
    else {
      const low = column.reduce((best, point) => (point[1] < best[1] ? point : best));
      const high = column.reduce((best, point) => (point[1] > best[1] ? point : best));
      const ends = [column[0], column.at(-1)];
      kept.push(...column.filter((point) => point === low || point === high || ends.includes(point)));
    }
    column = [];
  };
  for (const point of stretch) {
    const first = column[0];
    if (first !== undefined && Math.floor(pixelOf(first[0])) !== Math.floor(pixelOf(point[0]))) flush();
    column.push(point);
  }
  flush();
  return kept;
}

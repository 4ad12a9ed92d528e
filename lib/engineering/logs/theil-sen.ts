import { median } from "simple-statistics";

/** A straight line with the 95 % interval of its slope. */
export type RobustLine = {
  readonly slope: number;
  readonly slopeLow: number;
  readonly slopeHigh: number;
  readonly intercept: number;
};

/**
 * The line of Theil and Sen: the median of the slopes between all pairs of points, which a few odd ones (guests, an open
 * window) do not move.
 *
 * @param points - Any number of points, each finite in its unit; −1e300 to 1e300.
 * @returns Slope in y per x, intercept in y; null when no two points differ in x.
 * @see Sen 1968, Journal of the American Statistical Association 63, slope and interval by Kendall's tau (recalled).
 */
export function theilSen(points: readonly { readonly x: number; readonly y: number }[]): RobustLine | null {
  const n = points.length;
  const slopes = new Float64Array((n * (n - 1)) / 2);
  let count = 0;
  for (const [index, one] of points.entries()) {
    for (let later = index + 1; later < n; later++) {
      const other = points[later];
      if (other === undefined || Math.abs(other.x - one.x) <= 1e-6) continue;
      slopes[count++] = (other.y - one.y) / (other.x - one.x);
    }
  }
  if (count === 0) return null;
  const sorted = slopes.subarray(0, count).sort();
  const slope = ((sorted[(count - 1) >> 1] ?? 0) + (sorted[count >> 1] ?? 0)) / 2;
  // 1.96 standard deviations of Kendall's S, in pairs.
  const width = 1.96 * Math.sqrt((n * (n - 1) * (2 * n + 5)) / 18);
  const low = Math.max(0, Math.floor((count - width) / 2));
  const high = Math.min(count - 1, Math.ceil((count + width) / 2));
  return {
    slope,
    slopeLow: sorted[low] ?? slope,
    slopeHigh: sorted[high] ?? slope,
    intercept: median(points.map(({ x, y }) => y - slope * x)),
  };
}

/** Where a bounded least-squares search ended. */
export type LeastSquares = {
  readonly values: readonly number[];
  /** Standard error of each value; infinite where the residuals do not depend on it. */
  readonly standardErrors: readonly number[];
  readonly steps: number;
};

const MOST_STEPS = 40;
const SMALL = 1e-7;

/**
 * Least squares within bounds, after Levenberg and Marquardt: steps of the damped normal equations, cut at the bounds, with slopes by
 * central differences. No closed form, as the residuals are those of a simulation.
 *
 * @param residuals - From values to residuals in one unit, always as many.
 * @param start - Values to begin at, in the ranges of `low` and `high`, any unit.
 * @param low - Lowest values, −1e9 to 1e9, in the values' units.
 * @param high - Highest values, above `low`, to 1e9, in the values' units.
 * @param groupOf - Group of each residual, 0 first, for residuals that hang together, as those of one day do; without it each counts as
 * independent.
 * @returns Values, standard errors in their unit, steps taken, at most 40.
 * @see Marquardt 1963 (recalled); standard errors from the residuals' variance and the inverse normal matrix (computed);
 * with groups, from the scatter of the groups' slopes (Liang and Zeger 1986, recalled).
 */
export function boundedLeastSquares(
  residuals: (values: readonly number[]) => Float64Array,
  start: readonly number[],
  low: readonly number[],
  high: readonly number[],
  groupOf: Int32Array | null = null,
): LeastSquares {
  let values = [...start];
  let now = residuals(values);
  let damping = 1e-3;
  let steps = 0;
  for (; steps < MOST_STEPS && damping < 1e8; steps++) {
    const { matrix, right } = normalEquations(residuals, values, low, high, now);
    // A value at its bound that wants beyond it stands still, or it would drag the others along.
    const free = values.map((value, i) => {
      const slope = right[i] ?? 0;
      return !((value <= (low[i] ?? value) && slope > 0) || (value >= (high[i] ?? value) && slope < 0));
    });
    const damped = matrix.map((row, i) =>
      row.map((one, j) => (i === j ? one * (1 + damping) + 1e-12 : free[i] && free[j] ? one : 0)),
    );
    const move = solved(
      damped,
      right.map((one, i) => (free[i] ? one : 0)),
    );
    const next = values.map((value, i) => within(value - (move[i] ?? 0), low[i] ?? value, high[i] ?? value));
    const then = residuals(next);
    if (squares(then) < squares(now)) {
      const settled = squares(now) - squares(then) <= SMALL * squares(now);
      values = next;
      now = then;
      damping /= 5;
      if (settled) break;
    } else damping *= 5;
  }
  const { matrix, slopes } = normalEquations(residuals, values, low, high, now);
  const scatter =
    groupOf === null
      ? scaled(matrix, squares(now) / Math.max(1, now.length - values.length))
      : groupScatter(slopes, now, groupOf);
  const standardErrors = values.map((_, i) => {
    if ((matrix[i]?.[i] ?? 0) === 0) return Number.POSITIVE_INFINITY;
    const unit = values.map((__, j) => (i === j ? 1 : 0));
    const column = solved(
      matrix.map((row, k) => row.map((one, j) => (k === j ? one + 1e-12 : one))),
      unit,
    );
    const spread = scatter.reduce(
      (sum, row, k) =>
        sum + row.reduce((inner, one, j) => inner + (column[k] ?? 0) * one * (column[j] ?? 0), 0),
      0,
    );
    return Math.sqrt(Math.max(0, spread));
  });
  return { values, standardErrors, steps };
}

function normalEquations(
  residuals: (values: readonly number[]) => Float64Array,
  values: readonly number[],
  low: readonly number[],
  high: readonly number[],
  now: Float64Array,
): {
  readonly matrix: number[][];
  readonly right: number[];
  readonly slopes: readonly Float64Array[];
} {
  const slopes = values.map((value, i) => {
    const step = 1e-4 * Math.max(Math.abs(value), 1e-3);
    const up = within(value + step, low[i] ?? value, high[i] ?? value);
    const down = within(value - step, low[i] ?? value, high[i] ?? value);
    const above = residuals(values.map((one, j) => (i === j ? up : one)));
    const below = residuals(values.map((one, j) => (i === j ? down : one)));
    return above.map((one, k) => (one - (below[k] ?? 0)) / (up - down));
  });
  const dot = (a: Float64Array, b: Float64Array): number =>
    a.reduce((sum, one, k) => sum + one * (b[k] ?? 0), 0);
  return {
    matrix: slopes.map((a) => slopes.map((b) => dot(a, b))),
    right: slopes.map((a) => dot(a, now)),
    slopes,
  };
}

function scaled(matrix: readonly (readonly number[])[], by: number): readonly (readonly number[])[] {
  return matrix.map((row) => row.map((one) => one * by));
}

/** Sum over the groups of slope · residual, each with itself; few groups count for a little more than they show. */
function groupScatter(
  slopes: readonly Float64Array[],
  now: Float64Array,
  groupOf: Int32Array,
): readonly (readonly number[])[] {
  const groups = groupOf.reduce((most, one) => Math.max(most, one), 0) + 1;
  const sums = slopes.map((slope) => {
    const sum = new Float64Array(groups);
    for (let place = 0; place < now.length; place++) {
      const group = groupOf[place] ?? 0;
      sum[group] = (sum[group] ?? 0) + (slope[place] ?? 0) * (now[place] ?? 0);
    }
    return sum;
  });
  const few = groups / Math.max(1, groups - 1);
  return sums.map((a) =>
    sums.map((b) => few * a.reduce((sum, one, group) => sum + one * (b[group] ?? 0), 0)),
  );
}

/** Gaussian elimination with pivots; the matrix is small and was damped. */
function solved(matrix: readonly (readonly number[])[], right: readonly number[]): number[] {
  const rows = matrix.map((row, i) => [...row, right[i] ?? 0]);
  const size = rows.length;
  const cell = (i: number, j: number): number => rows[i]?.[j] ?? 0;
  for (let column = 0; column < size; column++) {
    let pivot = column;
    for (let i = column; i < size; i++)
      if (Math.abs(cell(i, column)) > Math.abs(cell(pivot, column))) pivot = i;
    const [from, to] = [rows[pivot], rows[column]];
    if (from !== undefined && to !== undefined) {
      rows[pivot] = to;
      rows[column] = from;
    }
    for (let i = column + 1; i < size; i++) {
      const share = cell(i, column) / cell(column, column);
      rows[i] = (rows[i] ?? []).map((one, j) => one - share * cell(column, j));
    }
  }
  const found = new Array<number>(size).fill(0);
  for (let i = size - 1; i >= 0; i--) {
    const rest = found.reduce((sum, one, j) => sum + (j > i ? one * cell(i, j) : 0), 0);
    found[i] = (cell(i, size) - rest) / cell(i, i);
  }
  return found;
}

function squares(values: Float64Array): number {
  return values.reduce((sum, one) => sum + one * one, 0);
}

function within(value: number, low: number, high: number): number {
  return Math.min(high, Math.max(low, value));
}

/** Pairs of a straight line's points, in two columns that grow. */
export type Points = {
  readonly add: (x: number, y: number) => void;
  readonly count: () => number;
  readonly line: () => LeastSquares;
};

/** Slope and correlation of points, and how far apart their x lie; NaN where they do not say. */
export type LeastSquares = { readonly slope: number; readonly r: number; readonly spread: number };

/**
 * Points of a least-squares line. Two columns of plain numbers instead of a list of pairs: a year of a log has a hundred thousand
 * points, and the pairs would take longer to make than the line.
 *
 * @returns Nothing added yet; points may be any finite numbers.
 * @see Least squares about the means, Draper and Smith, Applied Regression Analysis, ch. 1 (recalled); tests hold it against a general library.
 */
export function points(): Points {
  let [x, y] = [new Float64Array(1_024), new Float64Array(1_024)];
  let length = 0;
  return {
    add: (one, other) => {
      if (length === x.length) [x, y] = [doubled(x), doubled(y)];
      x[length] = one;
      y[length] = other;
      length++;
    },
    count: () => length,
    line: () => lineThrough(x.subarray(0, length), y.subarray(0, length)),
  };
}

function lineThrough(x: Float64Array, y: Float64Array): LeastSquares {
  const { length } = x;
  let sumX = 0;
  let sumY = 0;
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  for (let index = 0; index < length; index++) {
    const one = x[index] ?? 0;
    sumX += one;
    sumY += y[index] ?? 0;
    if (one < least) least = one;
    if (one > most) most = one;
  }
  const [meanX, meanY] = [sumX / length, sumY / length];
  let xx = 0;
  let xy = 0;
  let yy = 0;
  for (let index = 0; index < length; index++) {
    const dx = (x[index] ?? 0) - meanX;
    const dy = (y[index] ?? 0) - meanY;
    xx += dx * dx;
    xy += dx * dy;
    yy += dy * dy;
  }
  return { slope: xy / xx, r: xy / Math.sqrt(xx * yy), spread: most - least };
}

function doubled(values: Float64Array<ArrayBuffer>): Float64Array<ArrayBuffer> {
  const grown = new Float64Array(2 * values.length);
  grown.set(values);
  return grown;
}

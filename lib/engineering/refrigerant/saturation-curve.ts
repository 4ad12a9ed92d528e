import { NotConvergedError } from "../errors";

const RANKINE_OFFSET_F = 459.67;
const NEWTON_STEPS = 40;

/** A smooth curve through saturation rows: a cubic spline of ln P against 1/T, ready for evaluation. */
export type SaturationCurve = {
  readonly firstF: number;
  readonly lastF: number;
  readonly stepF: number;
  /** 1/T of each row, 1/°R, falling. */
  readonly inverseTemp: Float64Array;
  /** ln P, slope and the two higher coefficients of each piece, four numbers a row. */
  readonly pieces: Float64Array;
};

/**
 * Lays a cubic spline through rows on an even temperature grid.
 *
 * ln P is nearly straight in 1/T (Clausius–Clapeyron), so the pieces bend little. Slope and curvature are
 * continuous; the two end slopes are those of the cubic through the four rows nearest the end.
 *
 * @param firstF - Temperature of the first row, °F, above absolute zero (−459.67).
 * @param stepF - Distance between rows, °F. More than 0.
 * @param pressuresPsia - At least 4 pressures, psia, more than 0 and rising.
 * @see de Boor, A Practical Guide to Splines, ch. IV, cubic spline with given end slopes (recalled).
 */
export function saturationCurve(
  firstF: number,
  stepF: number,
  pressuresPsia: readonly number[],
): SaturationCurve {
  const rows = pressuresPsia.length;
  const x = Float64Array.from(pressuresPsia, (_, row) => 1 / (firstF + stepF * row + RANKINE_OFFSET_F));
  const y = Float64Array.from(pressuresPsia, Math.log);
  const slopes = splineSlopes(x, y);
  const pieces = new Float64Array(4 * rows);
  for (let row = 0; row < rows - 1; row += 1) {
    const width = at(x, row + 1) - at(x, row);
    const chord = (at(y, row + 1) - at(y, row)) / width;
    pieces[4 * row] = at(y, row);
    pieces[4 * row + 1] = at(slopes, row);
    pieces[4 * row + 2] = (3 * chord - 2 * at(slopes, row) - at(slopes, row + 1)) / width;
    pieces[4 * row + 3] = (at(slopes, row) + at(slopes, row + 1) - 2 * chord) / (width * width);
  }
  pieces[4 * rows - 4] = at(y, rows - 1);
  return { firstF, lastF: firstF + stepF * (rows - 1), stepF, inverseTemp: x, pieces };
}

/**
 * Pressure on the curve, psia, at a temperature within its ends, °F.
 *
 * @param tempF - °F, within the curve's ends: −40 to 150 at most.
 * @returns psia.
 * @see The spline of {@link saturationCurve} (computed).
 */
export function pressureOnCurve(curve: SaturationCurve, tempF: number): number {
  const piece = Math.min(Math.floor((tempF - curve.firstF) / curve.stepF), curve.inverseTemp.length - 2);
  const offset = 1 / (tempF + RANKINE_OFFSET_F) - at(curve.inverseTemp, piece);
  return Math.exp(lnPressure(curve.pieces, 4 * piece, offset));
}

/**
 * Slope of ln P with temperature, 1/°F, at a temperature within the curve's ends, °F.
 *
 * @param tempF - °F, within the curve's ends: −40 to 150 at most.
 * @returns 1/°F.
 * @see Derivative of the spline (computed).
 */
export function lnPressureSlope(curve: SaturationCurve, tempF: number): number {
  const piece = Math.min(Math.floor((tempF - curve.firstF) / curve.stepF), curve.inverseTemp.length - 2);
  const inverse = 1 / (tempF + RANKINE_OFFSET_F);
  const offset = inverse - at(curve.inverseTemp, piece);
  return -lnPressureDerivative(curve.pieces, 4 * piece, offset) * inverse * inverse;
}

/**
 * Temperature on the curve, °F, at a pressure within its ends, psia.
 *
 * Solves the very cubic that gives the pressure, so one undoes the other to 1e-9 °F. Newton's method inside the one
 * piece that holds the answer, kept in that piece by halving; the closed form of a cubic loses digits on so straight a curve.
 *
 * @param pressurePsia - psia, more than 0, within the curve's ends.
 * @returns °F.
 * @throws {@link NotConvergedError} when the steps run out.
 * @see Inverse of {@link pressureOnCurve} (computed).
 */
export function temperatureOnCurve(curve: SaturationCurve, pressurePsia: number): number {
  const target = Math.log(pressurePsia);
  const { pieces, inverseTemp } = curve;
  const piece = findPiece(curve, target);
  const start = 4 * piece;
  const base = at(inverseTemp, piece);

  // Offsets run from 0 down to the (negative) width; ln P rises as the offset falls.
  let warm = at(inverseTemp, piece + 1) - base;
  let cold = 0;
  let offset = (warm * (target - at(pieces, start))) / (at(pieces, start + 4) - at(pieces, start));
  for (let step = 0; step < NEWTON_STEPS; step += 1) {
    const miss = lnPressure(pieces, start, offset) - target;
    if (miss > 0) warm = offset;
    else cold = offset;
    let next = offset - miss / lnPressureDerivative(pieces, start, offset);
    if (!(next >= warm && next <= cold)) next = (warm + cold) / 2;
    // dT = −T² d(1/T): with 1/T near 0.002 per °R a step of 2e-16 is under 1e-10 °F.
    if (Math.abs(next - offset) < 2e-16) return 1 / (base + next) - RANKINE_OFFSET_F;
    offset = next;
  }
  throw new NotConvergedError("saturation temperature", NEWTON_STEPS, warm - cold, "1/°R");
}

/** The piece that holds a value of ln P: a straight line in 1/T says nearly where, a few steps settle it. */
function findPiece(curve: SaturationCurve, target: number): number {
  const { pieces, inverseTemp } = curve;
  const last = inverseTemp.length - 1;
  const share = (target - at(pieces, 0)) / (at(pieces, 4 * last) - at(pieces, 0));
  const inverse = at(inverseTemp, 0) + share * (at(inverseTemp, last) - at(inverseTemp, 0));
  let piece = Math.floor((1 / inverse - RANKINE_OFFSET_F - curve.firstF) / curve.stepF);
  piece = Math.min(Math.max(piece, 0), last - 1);
  while (piece > 0 && at(pieces, 4 * piece) > target) piece -= 1;
  while (piece < last - 1 && at(pieces, 4 * piece + 4) < target) piece += 1;
  return piece;
}

function lnPressure(pieces: Float64Array, start: number, offset: number): number {
  return (
    at(pieces, start) +
    offset * (at(pieces, start + 1) + offset * (at(pieces, start + 2) + offset * at(pieces, start + 3)))
  );
}

function lnPressureDerivative(pieces: Float64Array, start: number, offset: number): number {
  return at(pieces, start + 1) + offset * (2 * at(pieces, start + 2) + 3 * offset * at(pieces, start + 3));
}

/** Slopes that make the second derivative continuous: a tridiagonal system, solved from both its given ends. */
function splineSlopes(x: Float64Array, y: Float64Array): Float64Array {
  const last = x.length - 1;
  const slopes = new Float64Array(x.length);
  slopes[0] = endSlope(x, y, 0, 1);
  slopes[last] = endSlope(x, y, last, -1);
  const upper = new Float64Array(x.length);
  for (let row = 1; row < last; row += 1) {
    const before = at(x, row) - at(x, row - 1);
    const after = at(x, row + 1) - at(x, row);
    const chordBefore = (at(y, row) - at(y, row - 1)) / before;
    const chordAfter = (at(y, row + 1) - at(y, row)) / after;
    const wanted = 3 * (chordBefore / before + chordAfter / after);
    const pivot = 2 * (1 / before + 1 / after) - at(upper, row - 1) / before;
    upper[row] = 1 / after / pivot;
    slopes[row] = (wanted - at(slopes, row - 1) / before) / pivot;
  }
  for (let row = last - 1; row >= 1; row -= 1) {
    slopes[row] = at(slopes, row) - at(upper, row) * at(slopes, row + 1);
  }
  return slopes;
}

/** Slope at an end of the cubic through its four rows (Newton's divided differences). */
function endSlope(x: Float64Array, y: Float64Array, end: number, inward: 1 | -1): number {
  const point = (k: number): [number, number] => [at(x, end + inward * k), at(y, end + inward * k)];
  const [x0, y0] = point(0);
  const [x1, y1] = point(1);
  const [x2, y2] = point(2);
  const [x3, y3] = point(3);
  const d01 = (y1 - y0) / (x1 - x0);
  const d12 = (y2 - y1) / (x2 - x1);
  const d23 = (y3 - y2) / (x3 - x2);
  const d012 = (d12 - d01) / (x2 - x0);
  const d123 = (d23 - d12) / (x3 - x1);
  const d0123 = (d123 - d012) / (x3 - x0);
  return d01 + d012 * (x0 - x1) + d0123 * (x0 - x1) * (x0 - x2);
}

/** A number of an array whose index the code above keeps inside. NaN would surface at once in the tests. */
function at(values: Float64Array, index: number): number {
  return values[index] ?? Number.NaN;
}

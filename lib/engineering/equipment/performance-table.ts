import { ImpossibleStateError, OutOfRangeError } from "../errors";
import { type Btuh, btuh, quantity, type Ratio, ratio, type Watts, watts } from "../units";

/** One line of the maker's expanded cooling data. */
export type PerformancePoint = {
  readonly outdoorDbF: number;
  readonly enteringWbF: number;
  readonly enteringDbF: number;
  readonly airflowCfm: number;
  readonly totalBtuh: number;
  readonly sensibleBtuh: number;
  readonly powerW: number | null;
};

/** In the order in which the table is cut down: outdoor first, airflow last. */
export const PERFORMANCE_AXES = ["outdoorDbF", "enteringWbF", "enteringDbF", "airflowCfm"] as const;
export type PerformanceAxis = (typeof PERFORMANCE_AXES)[number];
export type PerformanceConditions = { readonly [A in PerformanceAxis]: number };

/** A published line and its share in the answer. */
export type PointUsed = { readonly point: PerformancePoint; readonly weight: number };

/** An axis on which the maker's table has one value only, and the job has another. */
export type AxisNotVaried = {
  readonly axis: PerformanceAxis;
  readonly tableValue: number;
  readonly askedValue: number;
  readonly unit: string;
};

export type Performance = {
  readonly totalBtuh: Btuh;
  readonly sensibleBtuh: Btuh;
  readonly latentBtuh: Btuh;
  readonly sensibleRatio: Ratio;
  /** `null` when a line used has no power. */
  readonly powerW: Watts | null;
  readonly pointsUsed: readonly PointUsed[];
  /** Not corrected for: to be shown beside the answer. */
  readonly notVaried: readonly AxisNotVaried[];
};

const CHECKS = {
  outdoorDbF: quantity("outdoorDbF", "°F", -40, 150),
  enteringWbF: quantity("enteringWbF", "°F", 20, 100),
  enteringDbF: quantity("enteringDbF", "°F", 30, 120),
  airflowCfm: quantity("airflowCfm", "cfm", 50, 20_000),
} as const satisfies Record<PerformanceAxis, (value: number) => number>;
const UNITS = { outdoorDbF: "°F", enteringWbF: "°F", enteringDbF: "°F", airflowCfm: "cfm" } as const;

const totalCapacity = quantity("totalBtuh", "Btu/h", 100, 1e6);
const sensibleCapacity = quantity("sensibleBtuh", "Btu/h", 0, 1e6);
const power = quantity("powerW", "W", 0, 1e5);

/**
 * Capacity and power at the job's conditions from the maker's expanded data.
 *
 * The table is cut down axis by axis in the order of {@link PERFORMANCE_AXES}: the nearest published values on either side
 * are interpolated linearly, each with its own smaller table, so that lines a maker leaves out (no 67 °F wet bulb at 65 °F dry
 * bulb) do no harm unless they are asked for. On a complete grid this is multilinear interpolation. Never beyond the table.
 * An axis on which the whole table has one value cannot be corrected for: if the job differs, it is reported in `notVaried`.
 * An axis with one value only in the part of the table that is needed must match exactly.
 *
 * @param table - At least one line. Temperatures °F (outdoor −40 to 150, wet bulb 20 to 100 and not above dry bulb 30 to 120), airflow
 * 50 to 20,000 cfm, total 100 to 1,000,000 Btu/h, sensible 0 to the total, power 0 to 100,000 W or `null`.
 * @param conditions - The same four quantities at the job.
 * @returns Capacity, power, the lines used with their weights, and the axes not corrected for.
 * @throws {@link OutOfRangeError} naming the axis when the job lies outside the published values, or for an implausible number.
 * @throws {@link ImpossibleStateError} for an empty table, two lines at one condition, sensible above total, or wet bulb above dry bulb.
 * @see The maker's expanded performance data; interpolation checked by hand arithmetic (computed).
 */
export function performanceAt(
  table: readonly PerformancePoint[],
  conditions: PerformanceConditions,
): Performance {
  if (table.length === 0) throw new ImpossibleStateError("The performance table has no lines.", ["table"]);
  for (const point of table) checkPoint(point);
  checkConditions(conditions);

  const notVaried: AxisNotVaried[] = [];
  const target = { ...conditions };
  for (const axis of PERFORMANCE_AXES) {
    const values = valuesOf(table, axis);
    const only = values[0];
    if (values.length === 1 && only !== undefined && only !== conditions[axis]) {
      notVaried.push({ axis, tableValue: only, askedValue: conditions[axis], unit: UNITS[axis] });
      target[axis] = only;
    }
  }

  const pointsUsed = weightsAt(table, target, 0);
  const sum = (read: (point: PerformancePoint) => number): number =>
    pointsUsed.reduce((total, { point, weight }) => total + weight * read(point), 0);
  const totalBtuh = sum((point) => point.totalBtuh);
  const sensibleBtuh = Math.min(
    sum((point) => point.sensibleBtuh),
    totalBtuh, // Only rounding can put the weighted sum above: every line has sensible ≤ total.
  );
  const hasPower = pointsUsed.every(({ point }) => point.powerW !== null);
  return {
    totalBtuh: btuh(totalBtuh),
    sensibleBtuh: btuh(sensibleBtuh),
    latentBtuh: btuh(totalBtuh - sensibleBtuh),
    sensibleRatio: ratio(sensibleBtuh / totalBtuh),
    powerW: hasPower ? watts(sum((point) => point.powerW ?? 0)) : null,
    pointsUsed,
    notVaried,
  };
}

function weightsAt(
  lines: readonly PerformancePoint[],
  target: PerformanceConditions,
  depth: number,
): readonly PointUsed[] {
  const axis = PERFORMANCE_AXES[depth];
  if (axis === undefined) return [onlyLine(lines)];
  const values = valuesOf(lines, axis);
  const asked = target[axis];
  const below = values.findLast((value) => value <= asked);
  const above = values.find((value) => value >= asked);
  if (below === undefined || above === undefined) throw outsideTable(axis, asked, values);

  const at = (value: number): readonly PointUsed[] =>
    weightsAt(
      lines.filter((line) => line[axis] === value),
      target,
      depth + 1,
    );
  if (below === above) return at(below);
  const share = (asked - below) / (above - below);
  return [...scaled(at(below), 1 - share), ...scaled(at(above), share)];
}

function scaled(used: readonly PointUsed[], share: number): readonly PointUsed[] {
  return used.map(({ point, weight }) => ({ point, weight: weight * share }));
}

function onlyLine(lines: readonly PerformancePoint[]): PointUsed {
  const [point, other] = lines;
  if (point === undefined || other !== undefined) {
    throw new ImpossibleStateError(
      `The performance table has ${lines.length} lines at one condition (${conditionWords(lines[0])}); keep one.`,
      ["table"],
    );
  }
  return { point, weight: 1 };
}

function valuesOf(lines: readonly PerformancePoint[], axis: PerformanceAxis): readonly number[] {
  return [...new Set(lines.map((line) => line[axis]))].sort((a, b) => a - b);
}

function outsideTable(axis: PerformanceAxis, asked: number, values: readonly number[]): OutOfRangeError {
  return new OutOfRangeError(axis, asked, UNITS[axis], values[0] ?? 0, values.at(-1) ?? 0);
}

function checkPoint(point: PerformancePoint): void {
  checkConditions(point);
  totalCapacity(point.totalBtuh);
  sensibleCapacity(point.sensibleBtuh);
  if (point.powerW !== null) power(point.powerW);
  if (point.sensibleBtuh > point.totalBtuh) {
    throw new ImpossibleStateError(
      `sensibleBtuh ${point.sensibleBtuh} is above totalBtuh ${point.totalBtuh} in the line at ${conditionWords(point)}; check both`,
      ["sensibleBtuh", "totalBtuh"],
    );
  }
}

function checkConditions(conditions: PerformanceConditions): void {
  for (const axis of PERFORMANCE_AXES) CHECKS[axis](conditions[axis]);
  if (conditions.enteringWbF > conditions.enteringDbF) {
    throw new ImpossibleStateError(
      `enteringWbF ${conditions.enteringWbF} °F is above enteringDbF ${conditions.enteringDbF} °F; check both or whether they were swapped`,
      ["enteringWbF", "enteringDbF"],
    );
  }
}

function conditionWords(point: PerformancePoint | undefined): string {
  if (point === undefined) return "no condition";
  return `${point.outdoorDbF} °F outdoors, ${point.enteringWbF} °F wet bulb, ${point.enteringDbF} °F dry bulb, ${point.airflowCfm} cfm`;
}

import { type Cfm, cfm, type InWc, inWc, requireRange, type Watts, watts } from "../units";
import { between, type FanPoint, fanCurve, segments } from "./fan-table";

/** Where fan and ducts meet, or on which side of the maker's table they would. */
export type OperatingPoint =
  | {
      readonly kind: "on the table";
      readonly setting: string;
      readonly airflowCfm: Cfm;
      readonly externalStaticInWc: InWc;
      /** `null` when the maker prints no power for the lines around the point. */
      readonly powerW: Watts | null;
    }
  | {
      readonly kind: "off the table";
      readonly setting: string;
      /** The ducts are easier than the lowest static listed, or harder than the highest. */
      readonly side: "below the lowest static" | "above the highest static";
      readonly listedStaticInWc: InWc;
    };

/**
 * The duct coefficient k of Δp = k · cfm², from one known point.
 *
 * @param point.airflowCfm - Airflow at the point, cfm. 50 to 20,000.
 * @param point.externalStaticInWc - External static there, in. w.c. 0.001 to 5.
 * @returns k, in. w.c. per cfm².
 * @throws {@link OutOfRangeError} outside those ranges.
 * @see ASHRAE Fundamentals, duct design: in fully turbulent flow pressure loss goes with the square of flow (physics).
 */
export function ductCoefficient(point: {
  readonly airflowCfm: number;
  readonly externalStaticInWc: number;
}): number {
  requireRange("airflow of the known point", point.airflowCfm, "cfm", 50, 20_000);
  requireRange("static pressure of the known point", point.externalStaticInWc, "in. w.c.", 0.001, 5);
  return point.externalStaticInWc / (point.airflowCfm * point.airflowCfm);
}

/**
 * Where one fan setting and the duct curve meet.
 *
 * @param input.table - The maker's fan table.
 * @param input.setting - The airflow setting.
 * @param input.ductCoefficient - k of Δp = k · cfm², in. w.c. per cfm². 1e-10 to 1e-2.
 * @returns The operating point, or the side of the table it would lie on: the table is never extended.
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} for unusable input.
 * @see Fan and system curve intersection (physics); the fan curve is linear between the maker's lines,
 * so each piece has a closed form. If a table's airflow rises with static, the crossing at the lowest static is taken.
 */
export function fanOperatingPoint(input: {
  readonly table: readonly FanPoint[];
  readonly setting: string;
  readonly ductCoefficient: number;
}): OperatingPoint {
  const { setting, ductCoefficient: k } = input;
  requireRange("duct coefficient", k, "in. w.c. per cfm²", 1e-10, 1e-2);
  const points = fanCurve(input.table, setting);
  const first = points.at(0);
  if (first !== undefined && surplus(first, k) > 0) {
    return {
      kind: "off the table",
      setting,
      side: "below the lowest static",
      listedStaticInWc: inWc(first.externalStaticInWc),
    };
  }
  for (const [low, high] of segments(points)) {
    if (surplus(high, k) < 0) continue;
    const part = crossing(low, high, k);
    return {
      kind: "on the table",
      setting,
      airflowCfm: cfm(between(low.airflowCfm, high.airflowCfm, part)),
      externalStaticInWc: inWc(between(low.externalStaticInWc, high.externalStaticInWc, part)),
      powerW:
        low.powerW === null || high.powerW === null ? null : watts(between(low.powerW, high.powerW, part)),
    };
  }
  return {
    kind: "off the table",
    setting,
    side: "above the highest static",
    listedStaticInWc: inWc(points.at(-1)?.externalStaticInWc ?? Number.NaN),
  };
}

/**
 * The operating point of every setting in the table, in the table's order.
 *
 * @param input - `table` and `ductCoefficient` as `fanOperatingPoint`, without the setting.
 * @returns One point a setting, cfm, in. w.c. and W.
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} as {@link fanOperatingPoint}.
 * @see Fan curve meets duct curve Δp = k·cfm² (physics).
 */
export function fanOperatingPoints(input: {
  readonly table: readonly FanPoint[];
  readonly ductCoefficient: number;
}): readonly OperatingPoint[] {
  const settings = [...new Set(input.table.map((point) => point.setting))];
  return settings.map((setting) => fanOperatingPoint({ ...input, setting }));
}

/**
 * What happens to airflow when the filter loads with dust.
 *
 * @param input.ductCoefficient - k with the clean filter in place, in. w.c. per cfm².
 * @param input.filter - Clean and loaded drop, in. w.c. 0 to 2, both at `atAirflowCfm` (50 to 20,000 cfm); loaded not below clean.
 * @returns Operating points clean and loaded, and the change of airflow in % (`null` when either is off the table).
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} for unusable input.
 * @see Filter drop taken as ∝ cfm², like the ducts: common practice, no source (thick media is nearer to ∝ cfm).
 */
export function filterLoading(input: {
  readonly table: readonly FanPoint[];
  readonly setting: string;
  readonly ductCoefficient: number;
  readonly filter: {
    readonly cleanInWc: number;
    readonly loadedInWc: number;
    readonly atAirflowCfm: number;
  };
}): {
  readonly clean: OperatingPoint;
  readonly loaded: OperatingPoint;
  readonly airflowChangePct: number | null;
} {
  const { filter, ...fan } = input;
  requireRange("clean filter drop", filter.cleanInWc, "in. w.c.", 0, 2);
  requireRange("loaded filter drop", filter.loadedInWc, "in. w.c.", filter.cleanInWc, 2);
  requireRange("airflow of the filter drops", filter.atAirflowCfm, "cfm", 50, 20_000);
  const added = (filter.loadedInWc - filter.cleanInWc) / (filter.atAirflowCfm * filter.atAirflowCfm);
  const clean = fanOperatingPoint(fan);
  const loaded = fanOperatingPoint({ ...fan, ductCoefficient: fan.ductCoefficient + added });
  const comparable = clean.kind === "on the table" && loaded.kind === "on the table";
  return {
    clean,
    loaded,
    airflowChangePct: comparable ? (loaded.airflowCfm / clean.airflowCfm - 1) * 100 : null,
  };
}

/** Static the fan has over what the ducts ask, in. w.c.: below 0 left of the crossing, above 0 right of it. */
function surplus(point: FanPoint, k: number): number {
  return point.externalStaticInWc - k * point.airflowCfm * point.airflowCfm;
}

/** Part of the way from `low` (surplus ≤ 0) to `high` (surplus ≥ 0) at which the surplus is zero. */
function crossing(low: FanPoint, high: FanPoint, k: number): number {
  const rise = high.externalStaticInWc - low.externalStaticInWc;
  const gain = high.airflowCfm - low.airflowCfm;
  // surplus(t) = c + b t − a t²
  const a = k * gain * gain;
  const b = rise - 2 * k * low.airflowCfm * gain;
  const c = surplus(low, k);
  if (c === 0) return 0;
  // Rounding alone can make this negative: the ends lie on both sides of zero.
  const root = Math.sqrt(Math.max(0, b * b + 4 * a * c));
  // The smaller root. b > 0 here, as the concave surplus climbs from c < 0 to zero; in this form it also holds at a = 0.
  return (-2 * c) / (b + root);
}

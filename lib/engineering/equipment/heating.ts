import { ImpossibleStateError } from "../errors";
import { type Finding, finding, notMeasured } from "../findings";
import {
  type Btuh,
  btuh,
  type Fahrenheit,
  fahrenheit,
  type Kilowatts,
  kilowatts,
  requireRange,
} from "../units";
import { equipmentRules } from "./rules";

/** Btu/h in one kW, as the trade writes it. */
export const BTUH_PER_KW = 3_412;

export type HeatingLines = {
  /** Maker's heating capacity at 17 °F outdoors, Btu/h. */
  readonly capacityAt17FBtuh: number;
  /** Maker's heating capacity at 47 °F outdoors, Btu/h. */
  readonly capacityAt47FBtuh: number;
  /** Heating load at `designF`, Btu/h. */
  readonly designLoadBtuh: number;
  /** Outdoor heating design temperature, °F. */
  readonly designF: number;
  /** Outdoor temperature at which the house needs no heat, °F. */
  readonly zeroLoadF: number;
};

export type BalancePoint = {
  /** Outdoor temperature at which capacity equals load. */
  readonly balancePointF: Fahrenheit;
  readonly capacityAtDesignBtuh: Btuh;
  /** Heat missing at design; zero when the balance point is at or below design. */
  readonly auxiliaryAtDesignKw: Kilowatts;
  /** True when design or balance point lies outside 17…47 °F, where the straight line has no rated point beside it. */
  readonly beyondRatedPoints: boolean;
};

/**
 * Where a heat pump's capacity line meets the house's load line, and the auxiliary heat missing at design.
 *
 * The capacity line is straight through the rated points at 17 and 47 °F. That is the trade's method and is carried on below
 * 17 °F on purpose; `beyondRatedPoints` says so, and the maker's own data at design is to be preferred.
 *
 * @param lines - Capacities 1,000 to 1,000,000 Btu/h, not falling as it gets warmer; load 500 to 1,000,000 Btu/h; `designF` −60 to 60 °F;
 * `zeroLoadF` above `designF`, up to 90 °F.
 * @returns Balance point, capacity and auxiliary heat at design.
 * @throws {@link OutOfRangeError} outside those ranges, or when the capacity line reaches zero above design.
 * @throws {@link ImpossibleStateError} for contradicting inputs.
 * @see Two straight lines (physics); rated points of AHRI 210/240 (recalled).
 */
export function balancePoint(lines: HeatingLines): BalancePoint {
  const at17 = requireRange("capacityAt17FBtuh", lines.capacityAt17FBtuh, "Btu/h", 1_000, 1e6);
  const at47 = requireRange("capacityAt47FBtuh", lines.capacityAt47FBtuh, "Btu/h", 1_000, 1e6);
  const load = requireRange("designLoadBtuh", lines.designLoadBtuh, "Btu/h", 500, 1e6);
  const designF = requireRange("designF", lines.designF, "°F", -60, 60);
  const zeroLoadF = requireRange("zeroLoadF", lines.zeroLoadF, "°F", -60, 90);
  if (at47 < at17) {
    throw new ImpossibleStateError(
      `capacityAt47FBtuh ${at47} is below capacityAt17FBtuh ${at17}; a heat pump gives more when it is warmer outside: check whether they were swapped`,
      ["capacityAt17FBtuh", "capacityAt47FBtuh"],
    );
  }
  if (zeroLoadF - designF < 1) {
    throw new ImpossibleStateError(
      `zeroLoadF ${zeroLoadF} °F must be at least 1 °F above designF ${designF} °F`,
      ["zeroLoadF", "designF"],
    );
  }

  const capacitySlope = (at47 - at17) / 30;
  const loadSlope = load / (zeroLoadF - designF);
  const capacityAtDesign = at17 + capacitySlope * (designF - 17);
  if (capacityAtDesign < 0)
    throw new ImpossibleStateError(
      `the line through the rated capacities falls to ${Math.round(capacityAtDesign)} Btu/h at designF ${designF} °F; use the maker's capacity at that temperature`,
      ["capacityAt17FBtuh", "capacityAt47FBtuh", "designF"],
    );
  // loadSlope · (zero − t) = at17 + capacitySlope · (t − 17)
  const balancePointF = (loadSlope * zeroLoadF - at17 + capacitySlope * 17) / (loadSlope + capacitySlope);
  return {
    balancePointF: fahrenheit(balancePointF),
    capacityAtDesignBtuh: btuh(capacityAtDesign),
    auxiliaryAtDesignKw: kilowatts(Math.max(0, load - capacityAtDesign) / BTUH_PER_KW),
    beyondRatedPoints: Math.min(designF, balancePointF) < 17 || Math.max(designF, balancePointF) > 47,
  };
}

/**
 * Auxiliary heat for a known heating capacity, for instance the maker's at the design temperature.
 *
 * @param loadBtuh - Heating load, Btu/h. 0 to 1,000,000.
 * @param capacityBtuh - Heat pump capacity at the same temperature, Btu/h. 0 to 1,000,000.
 * @returns kW; zero when the heat pump carries the load.
 * @throws {@link OutOfRangeError} outside those ranges.
 * @see `(load − capacity) / 3,412` (physics).
 */
export function auxiliaryHeatKw(loadBtuh: number, capacityBtuh: number): Kilowatts {
  requireRange("loadBtuh", loadBtuh, "Btu/h", 0, 1e6);
  requireRange("capacityBtuh", capacityBtuh, "Btu/h", 0, 1e6);
  return kilowatts(Math.max(0, loadBtuh - capacityBtuh) / BTUH_PER_KW);
}

/**
 * Balance point, and the auxiliary heat missing at design against what is installed.
 *
 * @param lines - As {@link balancePoint}, each `null` until known.
 * @param installedAuxiliaryKw - Auxiliary heat installed, kW, 0 to 100; `null` when not known: then for information only.
 * @returns One finding.
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} as {@link balancePoint}.
 * @see Two straight lines (physics).
 */
export function heatingFindings(
  lines: {
    readonly [K in keyof HeatingLines]: HeatingLines[K] | null;
  },
  installedAuxiliaryKw: number | null,
): readonly Finding[] {
  const rule = equipmentRules.balancePoint;
  const { capacityAt17FBtuh, capacityAt47FBtuh, designLoadBtuh, designF, zeroLoadF } = lines;
  if (
    capacityAt17FBtuh === null ||
    capacityAt47FBtuh === null ||
    designLoadBtuh === null ||
    designF === null ||
    zeroLoadF === null
  ) {
    const missing = Object.entries(lines)
      .filter(([, value]) => value === null)
      .map(([field]) => field);
    return [notMeasured(rule, missing, "Enter the heating load and the maker's capacity at 17 and 47 °F.")];
  }
  const found = balancePoint({ capacityAt17FBtuh, capacityAt47FBtuh, designLoadBtuh, designF, zeroLoadF });
  const capacity = Math.round(found.capacityAtDesignBtuh).toLocaleString("en-US");
  const needed = found.auxiliaryAtDesignKw;
  const installed =
    installedAuxiliaryKw === null
      ? null
      : requireRange("installedAuxiliaryKw", installedAuxiliaryKw, "kW", 0, 100);
  const covers = installed === null ? null : installed >= needed;
  return [
    finding(rule, {
      verdict: covers === null ? null : covers ? "meets" : "falls short",
      statement: `The balance point is ${found.balancePointF.toFixed(1)} °F; at ${designF} °F the heat pump gives ${capacity} Btu/h and ${needed.toFixed(2)} kW of auxiliary heat are needed${installed === null ? "" : `; ${installed.toFixed(2)} kW are installed`}.`,
      figures: [
        { label: "Balance point", value: found.balancePointF, unit: "°F", decimals: 1 },
        { label: "Auxiliary heat at design", value: needed, unit: "kW", decimals: 2 },
      ],
      nextStep:
        covers === false
          ? `Add ${(needed - (installed ?? 0)).toFixed(1)} kW of auxiliary heat, or choose equipment with more capacity in the cold.`
          : found.beyondRatedPoints
            ? "The line is carried beyond the rated 17 and 47 °F; use the maker's capacity there when it is published."
            : null,
      inputs: [...Object.keys(lines), "installedAuxiliaryKw"],
    }),
  ];
}

import { ImpossibleStateError, OutOfRangeError } from "../errors";
import type { Fahrenheit, FahrenheitDifference, Percent, Psia } from "../units";
import {
  lnPressureSlope,
  pressureOnCurve,
  type SaturationCurve,
  saturationCurve,
  temperatureOnCurve,
} from "./saturation-curve";
import { FIRST_ROW_F, ROW_STEP_F, saturationTable } from "./saturation-table";

export type Refrigerant = keyof typeof saturationTable;
/** Every refrigerant of the table. */
export const REFRIGERANTS = Object.keys(saturationTable) as readonly Refrigerant[];

/** Bubble: liquid begins to boil (subcooling). Dew: vapour begins to condense (superheat). */
export type SaturationSide = "bubble" | "dew";

type SideCurve = { readonly curve: SaturationCurve; readonly minPsia: number; readonly maxPsia: number };

const curves: ReadonlyMap<string, { readonly bubble: SideCurve; readonly dew: SideCurve }> = new Map(
  REFRIGERANTS.map((refrigerant) => [
    refrigerant,
    {
      bubble: sideCurve(saturationTable[refrigerant].bubble),
      dew: sideCurve(saturationTable[refrigerant].dew),
    },
  ]),
);

function sideCurve(pressuresPsia: readonly number[]): SideCurve {
  const curve = saturationCurve(FIRST_ROW_F, ROW_STEP_F, pressuresPsia);
  return {
    curve,
    minPsia: pressureOnCurve(curve, curve.firstF),
    maxPsia: pressureOnCurve(curve, curve.lastF),
  };
}

function getCurve(refrigerant: Refrigerant, side: SaturationSide): SideCurve {
  const found = curves.get(refrigerant)?.[side];
  if (found !== undefined) return found;
  throw new ImpossibleStateError(
    `no saturation table for ${refrigerant}, ${side}; choose one of ${REFRIGERANTS.join(", ")} and bubble or dew`,
    ["refrigerant", "side"],
  );
}

/**
 * Saturation pressure of a refrigerant.
 *
 * @param refrigerant - One of {@link REFRIGERANTS}.
 * @param tempF - Temperature, °F. −40 to 150; R-454B to 132.
 * @param side - Bubble or dew.
 * @returns Pressure, psia. Within 0.05 % of the model between the table's points; R-454B itself ±2 %.
 * @throws {@link OutOfRangeError} outside the table; {@link ImpossibleStateError} for an unknown refrigerant.
 * @see CoolProp 8.0.0 table, README.md beside this file (computed; R-410A matches a published table).
 */
export function saturationPressurePsia(refrigerant: Refrigerant, tempF: number, side: SaturationSide): Psia {
  const { curve } = getCurve(refrigerant, side);
  if (!(tempF >= curve.firstF && tempF <= curve.lastF)) {
    throw new OutOfRangeError("tempF", tempF, "°F", curve.firstF, curve.lastF);
  }
  return pressureOnCurve(curve, tempF) as Psia;
}

/**
 * Saturation temperature of a refrigerant: the inverse of {@link saturationPressurePsia} to 1e-9 °F.
 *
 * @param refrigerant - One of {@link REFRIGERANTS}.
 * @param pressurePsia - Absolute pressure, psia, more than 0 and within {@link saturationRangePsia}.
 * @param side - Bubble or dew.
 * @returns Temperature, °F.
 * @throws {@link OutOfRangeError} outside the table; {@link ImpossibleStateError} for an unknown refrigerant.
 * @see CoolProp 8.0.0 table, README.md beside this file (computed).
 */
export function saturationTempF(
  refrigerant: Refrigerant,
  pressurePsia: number,
  side: SaturationSide,
): Fahrenheit {
  const { curve, minPsia, maxPsia } = getCurve(refrigerant, side);
  if (!(pressurePsia >= minPsia && pressurePsia <= maxPsia)) {
    throw new OutOfRangeError("pressurePsia", pressurePsia, "psia", minPsia, maxPsia);
  }
  return temperatureOnCurve(curve, pressurePsia) as Fahrenheit;
}

/**
 * The pressures a table covers, psia.
 *
 * @param refrigerant - One of {@link REFRIGERANTS}.
 * @param side - Bubble or dew.
 * @returns Lowest and highest pressure, psia.
 * @throws {@link ImpossibleStateError} for an unknown refrigerant.
 * @see CoolProp 8.0.0 table, README.md beside this file (computed).
 */
export function saturationRangePsia(
  refrigerant: Refrigerant,
  side: SaturationSide,
): { readonly minPsia: Psia; readonly maxPsia: Psia } {
  const { minPsia, maxPsia } = getCurve(refrigerant, side);
  return { minPsia: minPsia as Psia, maxPsia: maxPsia as Psia };
}

/**
 * How far the saturation pressure itself may be off, k = 2.
 *
 * @param refrigerant - One of {@link REFRIGERANTS}.
 * @returns Percent of pressure: 2 for R-454B, whose mixture models differ by about 1 %; 0.2 for the others.
 * @throws {@link ImpossibleStateError} for an unknown refrigerant.
 * @see R-454B: comparison of mixture models (published). Others: stated accuracy of their reference equations (recalled).
 */
export function saturationUncertaintyPct(refrigerant: Refrigerant): Percent {
  getCurve(refrigerant, "bubble");
  return (refrigerant === "R-454B" ? 2 : 0.2) as Percent;
}

/**
 * The same uncertainty as a temperature: what ± percent of pressure means at this point of the curve.
 *
 * @param refrigerant - One of {@link REFRIGERANTS}.
 * @param pressurePsia - Absolute pressure, psia, more than 0 and within {@link saturationRangePsia}.
 * @param side - Bubble or dew.
 * @returns Expanded uncertainty (k = 2), °F.
 * @throws as {@link saturationTempF}.
 * @see First-order propagation, dT = (dP/P) / (d ln P/dT) (computed).
 */
export function saturationTempUncertaintyF(
  refrigerant: Refrigerant,
  pressurePsia: number,
  side: SaturationSide,
): FahrenheitDifference {
  const tempF = saturationTempF(refrigerant, pressurePsia, side);
  const share = saturationUncertaintyPct(refrigerant) / 100;
  // A pressure at the very end of the table may come back a rounding beyond its last temperature.
  const { curve } = getCurve(refrigerant, side);
  const within = Math.min(Math.max(tempF, curve.firstF), curve.lastF);
  return (share / lnPressureSlope(curve, within)) as FahrenheitDifference;
}

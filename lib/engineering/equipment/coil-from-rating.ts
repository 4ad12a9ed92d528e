import { type MoistAir, moistAir } from "../air";
import { ImpossibleStateError } from "../errors";
import { exp, ln } from "../exact-functions";
import { waterFromLatent } from "../moisture";
import {
  type Btuh,
  btuh,
  cfm,
  type Fahrenheit,
  type FahrenheitDifference,
  fahrenheit,
  fahrenheitDifference,
  type HumidityRatio,
  humidityRatio,
  type LbPerH,
  lbPerH,
  quantity,
  type Ratio,
  ratio,
  requireRange,
} from "../units";
import { coilBalance } from "./coil-balance";
import {
  COLDEST_SATURATION_F,
  fastSaturationEnthalpy,
  fastSaturationHumidityRatio,
  saturationEnthalpySlope,
  saturationHumidityRatioSlope,
} from "./saturation";

/** What the rated point says about a coil. */
export type RatedCoil = {
  /** Coil size: `BF = exp(−A0 / ṁ)`, in lb/h. Grows with the coil's surface. */
  readonly a0LbPerH: LbPerH;
  readonly bypassFactor: Ratio;
  /** Apparatus dew point at the rated point. */
  readonly adpF: Fahrenheit;
  readonly dryAirLbPerH: LbPerH;
  readonly leavingDbF: Fahrenheit;
  readonly leavingHumidityRatio: HumidityRatio;
  readonly totalBtuh: Btuh;
};

const ratedTotal = quantity("totalBtuh", "Btu/h", 1_000, 1e6);
const ratedRatio = quantity("sensibleRatio", "ratio", 0.3, 1);
const BISECTIONS = 60;

/**
 * Apparatus dew point, bypass factor and A0 of a coil from one rated point.
 *
 * The line from entering to leaving air is carried on to saturation. It may cross saturation twice; the first crossing,
 * the warmer one, is the coil. Found by halving between the leaving dry bulb and the temperature at which the line is
 * parallel to saturation (60 halvings, better than 1e-12 °F), as no closed form exists.
 *
 * @param input - `entering` air 40 to 120 °F; `airflowCfm` at the entering state, 50 to 20,000; `totalBtuh` 1,000 to
 * 1,000,000; `sensibleRatio` 0.3 to 1 (1 is a coil that only just stays dry).
 * @returns The coil.
 * @throws {@link OutOfRangeError} outside those ranges.
 * @throws {@link ImpossibleStateError} when no coil surface gives this split at this airflow.
 * @see EnergyPlus Engineering Reference, bypass factor of a direct-expansion coil (published; the rated example of the
 * tests is computed).
 */
export function coilFromRating(input: {
  readonly entering: MoistAir;
  readonly airflowCfm: number;
  readonly totalBtuh: number;
  readonly sensibleRatio: number;
}): RatedCoil {
  const { entering } = input;
  requireRange("entering.dryBulbF", entering.dryBulbF, "°F", 40, 120);
  requireRange("airflowCfm", input.airflowCfm, "cfm", 50, 20_000);
  const totalBtuh = ratedTotal(input.totalBtuh);
  const sensibleRatio = ratedRatio(input.sensibleRatio);
  const pressurePsia = entering.pressurePsia;
  const dryAirLbPerH = (cfm(input.airflowCfm) * 60) / entering.specificVolumeFt3PerLb;

  const water = waterFromLatent((1 - sensibleRatio) * totalBtuh, entering.dryBulbF);
  const leaving = coilBalance(entering, dryAirLbPerH, totalBtuh, water);
  const { enthalpyBtuPerLb: leavingEnthalpy, humidityRatio: leavingW, dryBulbF: leavingDbF } = leaving;
  if (!(leavingW > 1e-6)) throw noSuchCoil("it would take more water than the air holds");
  if (!(leavingDbF > COLDEST_SATURATION_F)) throw noSuchCoil("the air would leave below −10 °F");
  if (leavingW > fastSaturationHumidityRatio(leavingDbF, pressurePsia)) {
    throw noSuchCoil("the air would leave wetter than saturated");
  }

  // Mixing is a straight line in enthalpy and humidity ratio (in dry bulb and humidity ratio only nearly so). Above zero
  // where saturation holds more water than the line: outside the coil's surface.
  const slope = water / dryAirLbPerH / (entering.enthalpyBtuPerLb - leavingEnthalpy);
  const gap = (tempF: number): number =>
    fastSaturationHumidityRatio(tempF, pressurePsia) -
    (leavingW - slope * (leavingEnthalpy - fastSaturationEnthalpy(tempF, pressurePsia)));
  const steepness = (tempF: number): number =>
    saturationHumidityRatioSlope(tempF, pressurePsia) - slope * saturationEnthalpySlope(tempF, pressurePsia);

  // Saturation is convex, so the gap falls from the leaving air down to where the slopes are equal.
  const touchF =
    steepness(COLDEST_SATURATION_F) >= 0
      ? COLDEST_SATURATION_F
      : halve(COLDEST_SATURATION_F, leavingDbF, (tempF) => steepness(tempF) >= 0);
  if (gap(touchF) > 0) throw noSuchCoil("the line through entering and leaving air never meets saturation");
  const adpF = halve(touchF, leavingDbF, (tempF) => gap(tempF) >= 0);

  const surfaceEnthalpy = fastSaturationEnthalpy(adpF, pressurePsia);
  const bypassFactor = (leavingEnthalpy - surfaceEnthalpy) / (entering.enthalpyBtuPerLb - surfaceEnthalpy);
  if (!(bypassFactor > 1e-9)) throw noSuchCoil("the air would leave at the coil's own temperature");
  return {
    a0LbPerH: lbPerH(-dryAirLbPerH * ln(bypassFactor)),
    bypassFactor: ratio(bypassFactor),
    adpF: fahrenheit(adpF),
    dryAirLbPerH: lbPerH(dryAirLbPerH),
    leavingDbF: fahrenheit(leavingDbF),
    leavingHumidityRatio: humidityRatio(leavingW),
    totalBtuh: btuh(totalBtuh),
  };
}

/**
 * Bypass factor of a coil at another airflow.
 *
 * @param a0LbPerH - Coil size from {@link coilFromRating}, lb/h. More than 0.
 * @param dryAirLbPerH - Flow of dry air, lb/h. More than 0.
 * @returns Share of the air that passes untouched, 0 to 1.
 * @throws {@link OutOfRangeError} outside those ranges.
 * @see EnergyPlus Engineering Reference, `BF = exp(−A0 / ṁ)` (published).
 */
export function bypassFactorAt(a0LbPerH: number, dryAirLbPerH: number): Ratio {
  requireRange("a0LbPerH", a0LbPerH, "lb/h", 1, 1e6);
  requireRange("dryAirLbPerH", dryAirLbPerH, "lb/h", 1, 1e6);
  return ratio(exp(-a0LbPerH / dryAirLbPerH));
}

/**
 * Approach between coil surface and evaporating temperature at the rated point; it grows linearly with capacity from zero.
 *
 * @param input - `adpF` from {@link coilFromRating}; `evaporatingF` at the same rated point, below `adpF`, °F.
 * @returns Approach, °F difference.
 * @throws {@link OutOfRangeError} outside −20 to 90 °F.
 * @throws {@link ImpossibleStateError} when the refrigerant is warmer than the surface it cools.
 * @see Heat flows from surface to refrigerant in proportion to their difference (physics).
 */
export function ratedApproachF(input: {
  readonly adpF: number;
  readonly evaporatingF: number;
}): FahrenheitDifference {
  requireRange("adpF", input.adpF, "°F", -20, 90);
  requireRange("evaporatingF", input.evaporatingF, "°F", -20, 90);
  if (input.evaporatingF > input.adpF) {
    throw new ImpossibleStateError(
      `evaporatingF ${input.evaporatingF} °F is above adpF ${input.adpF.toFixed(1)} °F: the refrigerant must be colder than the coil; check both`,
      ["evaporatingF", "adpF"],
    );
  }
  return fahrenheitDifference(input.adpF - input.evaporatingF);
}

/**
 * The full leaving state of the rated point.
 *
 * @param coil - From {@link coilFromRating}.
 * @param entering - The entering air it was made with.
 * @returns Leaving air; °F, lb/lb and psia in its fields.
 * @throws {@link ImpossibleStateError} when the two do not belong together.
 * @see Rated balance of the coil (physics).
 */
export function ratedLeavingAir(coil: RatedCoil, entering: MoistAir): MoistAir {
  return moistAir({
    dryBulbF: coil.leavingDbF,
    humidityRatio: coil.leavingHumidityRatio,
    pressurePsia: entering.pressurePsia,
  });
}

/** Border between false (below) and true (above). */
function halve(lowF: number, highF: number, above: (tempF: number) => boolean): number {
  let low = lowF;
  let high = highF;
  for (let step = 0; step < BISECTIONS; step += 1) {
    const middle = (low + high) / 2;
    if (above(middle)) high = middle;
    else low = middle;
  }
  return high;
}

function noSuchCoil(reason: string): ImpossibleStateError {
  return new ImpossibleStateError(
    `No coil gives this total and sensible ratio at this airflow: ${reason}. Check totalBtuh, sensibleRatio, airflowCfm and the entering air.`,
    ["totalBtuh", "sensibleRatio", "airflowCfm", "entering"],
  );
}

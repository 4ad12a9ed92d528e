import { vapourEnthalpyBtuPerLb } from "../air/vapour-enthalpy";
import { COIL } from "./coil-numbers";
import { solveSaturated } from "./coil-surface";
import { dryBulbAt, fastSaturationHumidityRatio } from "./saturation";

/**
 * Mixes bypassed and treated air; where that would be fog the water falls out and the air leaves saturated.
 *
 * @param pressurePsia - Atmospheric pressure, psia, 6 to 17.
 * @param enteringDbF - °F, 40…120.
 * @param enteringHumidityRatio - lb/lb, 0 to saturation at the entering dry bulb.
 * @param enteringEnthalpy - Btu/lb, of that air: 9 to 150.
 * @param dryAirLbPerH - Flow of dry air, lb/h, more than 0.
 * @param bypassFactor - 0 to 1.
 * @param adpF - Surface temperature, °F, 20…120.
 * @param totalBtuh - Capacity, Btu/h, 0 or more.
 * @param out - Receives the result.
 * @throws {@link NotConvergedError} when the saturated leaving temperature does not settle.
 */
export function writeAir(
  pressurePsia: number,
  enteringDbF: number,
  enteringHumidityRatio: number,
  enteringEnthalpy: number,
  dryAirLbPerH: number,
  bypassFactor: number,
  adpF: number,
  totalBtuh: number,
  out: Float64Array,
): void {
  const surfaceHumidityRatio = fastSaturationHumidityRatio(adpF, pressurePsia);
  const drying = enteringHumidityRatio - surfaceHumidityRatio;
  let leavingHumidityRatio =
    drying > 0 ? enteringHumidityRatio - (1 - bypassFactor) * drying : enteringHumidityRatio;
  const leavingEnthalpy = enteringEnthalpy - totalBtuh / dryAirLbPerH;
  let leavingDbF = dryBulbAt(leavingEnthalpy, leavingHumidityRatio);
  let saturatedLeaving = 0;
  if (drying > 0 && leavingHumidityRatio > fastSaturationHumidityRatio(leavingDbF, pressurePsia)) {
    saturatedLeaving = 1;
    leavingDbF = solveSaturated(0, 1, leavingEnthalpy, pressurePsia, leavingDbF, enteringDbF);
    leavingHumidityRatio = fastSaturationHumidityRatio(leavingDbF, pressurePsia);
  }
  const moistureLbPerH = dryAirLbPerH * (enteringHumidityRatio - leavingHumidityRatio);
  out[COIL.totalBtuh] = totalBtuh;
  // Latent is taken at the entering dry bulb, as the rated point is; sensible is what remains.
  out[COIL.sensibleBtuh] = totalBtuh - moistureLbPerH * vapourEnthalpyBtuPerLb(enteringDbF);
  out[COIL.moistureLbPerH] = moistureLbPerH;
  out[COIL.leavingDbF] = leavingDbF;
  out[COIL.leavingHumidityRatio] = leavingHumidityRatio;
  out[COIL.adpF] = adpF;
  out[COIL.bypassFactor] = bypassFactor;
  out[COIL.saturatedLeaving] = saturatedLeaving;
}

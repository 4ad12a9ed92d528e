import { vapourEnthalpyBtuPerLb } from "../air/vapour-enthalpy";
import { COIL, type CoilAtFlow } from "./coil-numbers";
import { saturateAt, solveSaturated } from "./coil-surface";
import { dryBulbAt } from "./saturation";

/**
 * Mixes bypassed and treated air; where that would be fog the water falls out and the air leaves saturated.
 *
 * @param coil - The coil at its airflow.
 * @param numbers - Holds the entering air with its enthalpy, `adpF` (surface, °F, 20…120) and `totalBtuh` (0 or more); receives the rest.
 * @throws {@link NotConvergedError} when the saturated leaving temperature does not settle.
 */
export function writeAir(coil: CoilAtFlow, numbers: Float64Array): void {
  const { dryAirLbPerH, bypassFactor } = coil;
  const enteringDbF = numbers[COIL.enteringDbF] ?? 0;
  const enteringHumidityRatio = numbers[COIL.enteringHumidityRatio] ?? 0;
  const totalBtuh = numbers[COIL.totalBtuh] ?? 0;
  numbers[COIL.atF] = numbers[COIL.adpF] ?? 0;
  saturateAt(numbers);
  const drying = enteringHumidityRatio - (numbers[COIL.saturatedRatio] ?? 0);
  let leavingHumidityRatio =
    drying > 0 ? enteringHumidityRatio - (1 - bypassFactor) * drying : enteringHumidityRatio;
  const leavingEnthalpy = (numbers[COIL.enteringEnthalpy] ?? 0) - totalBtuh / dryAirLbPerH;
  let leavingDbF = dryBulbAt(leavingEnthalpy, leavingHumidityRatio);
  let saturatedLeaving = 0;
  numbers[COIL.atF] = leavingDbF;
  saturateAt(numbers);
  if (drying > 0 && leavingHumidityRatio > (numbers[COIL.saturatedRatio] ?? 0)) {
    saturatedLeaving = 1;
    numbers[COIL.temperatureWeight] = 0;
    numbers[COIL.enthalpyWeight] = 1;
    numbers[COIL.target] = leavingEnthalpy;
    numbers[COIL.highestF] = enteringDbF;
    numbers[COIL.solvedF] = leavingDbF;
    solveSaturated(numbers);
    leavingDbF = numbers[COIL.solvedF] ?? 0;
    numbers[COIL.atF] = leavingDbF;
    saturateAt(numbers);
    leavingHumidityRatio = numbers[COIL.saturatedRatio] ?? 0;
  }
  const moistureLbPerH = dryAirLbPerH * (enteringHumidityRatio - leavingHumidityRatio);
  // Latent is taken at the entering dry bulb, as the rated point is; sensible is what remains.
  numbers[COIL.sensibleBtuh] = totalBtuh - moistureLbPerH * vapourEnthalpyBtuPerLb(enteringDbF);
  numbers[COIL.moistureLbPerH] = moistureLbPerH;
  numbers[COIL.leavingDbF] = leavingDbF;
  numbers[COIL.leavingHumidityRatio] = leavingHumidityRatio;
  numbers[COIL.bypassFactor] = bypassFactor;
  numbers[COIL.saturatedLeaving] = saturatedLeaving;
}

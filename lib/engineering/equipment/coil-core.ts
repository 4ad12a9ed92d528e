import { exp } from "../exact-functions";
import { COIL, COIL_LIMIT, type CoilAtFlow, type CoilConstants } from "./coil-numbers";
import { heldAdp, surfaceEnthalpyAt, surfaceTemperature } from "./coil-surface";
import { writeAir } from "./leaving-air";
import { moistEnthalpy } from "./saturation";

/*
 * The coil-temperature-held system as plain numbers: no checks, no allocation, for the year simulation's loop.
 * `coilTemperatureHeld` is the checked door to it.
 *
 * Air crosses the coil as two streams: a share BF passes untouched, the rest leaves at the coil surface's state
 * (apparatus dew point, ADP). BF = exp(−A0 / ṁ).
 *   capacity(ADP) = ṁ (1 − BF) (h_in − h_surface(ADP))
 * The surface carries min(W_in, W_sat(ADP)): above the entering dew point it is dry and only cools.
 *   held:      ADP = held temperature + approach, approach = fixed part + slope · capacity
 *   ceiling:   capacity is more than the compressor has → ADP floats up until capacity = ceiling
 *   minimum:   capacity is less than the compressor can give → ADP floats down until capacity = minimum
 *   frost:     … but not below the frost limit, where the system cycles
 * Source of BF and A0: EnergyPlus Engineering Reference (published). The control law follows from the equipment's
 * description: compressor speed holds an evaporating temperature (physics).
 */

/**
 * A coil with its airflow.
 *
 * @param coil - Constants; `a0LbPerH` 100 to 200,000.
 * @param dryAirLbPerH - Flow of dry air, lb/h, more than 0.
 * @returns What {@link solveCoil} solves.
 * @see EnergyPlus Engineering Reference, `BF = exp(−A0 / ṁ)` (published).
 */
export function coilAtFlow(coil: CoilConstants, dryAirLbPerH: number): CoilAtFlow {
  const bypassFactor = exp(-coil.a0LbPerH / dryAirLbPerH);
  return { ...coil, dryAirLbPerH, bypassFactor, contactLbPerH: dryAirLbPerH * (1 - bypassFactor) };
}

/**
 * One steady state of the coil.
 *
 * @param coil - From {@link coilAtFlow}; the frost limit and the held temperature lie in 20…80 °F.
 * @param numbers - From `coilNumbers`: holds entering air, ceiling and minimum (ranges at {@link COIL}), receives the result. Its
 * old ADP is where the solution starts from, which from minute to minute saves half the steps and moves the answer by less than 1e-9 °F; a
 * fresh array of zeros is fine.
 * @throws {@link NotConvergedError} when a surface temperature does not settle.
 * @see EnergyPlus Engineering Reference for BF and A0 (published); the control law from the balances (physics).
 */
export function solveCoil(coil: CoilAtFlow, numbers: Float64Array): void {
  const { frostLimitF, contactLbPerH } = coil;
  const enteringDbF = numbers[COIL.enteringDbF] ?? 0;
  const enteringHumidityRatio = numbers[COIL.enteringHumidityRatio] ?? 0;
  const ceilingBtuh = numbers[COIL.ceilingBtuh] ?? 0;
  const minimumBtuh = numbers[COIL.minimumBtuh] ?? 0;
  const enteringEnthalpy = moistEnthalpy(enteringDbF, enteringHumidityRatio);
  const frostBtuh =
    contactLbPerH *
    (enteringEnthalpy - moistEnthalpy(frostLimitF, Math.min(coil.frostHumidityRatio, enteringHumidityRatio)));
  numbers[COIL.enteringEnthalpy] = enteringEnthalpy;

  // Where the control would hold the surface if the compressor ran at its ceiling. Capacity falls with surface temperature, so
  // the capacity there tells whether the held balance lies beyond the ceiling, without solving it first.
  const leastF = coil.heldTemperatureF + coil.fixedApproachF;
  const atCeilingF = Math.min(leastF + coil.approachSlopeFPerBtuh * ceilingBtuh, enteringDbF);
  const lastAdpF = numbers[COIL.adpF] ?? 0;
  numbers[COIL.startF] = lastAdpF > frostLimitF && lastAdpF < enteringDbF ? lastAdpF : atCeilingF;
  numbers[COIL.leastF] = leastF;

  let limitedBy: number = COIL_LIMIT.held;
  let compressorShare = 1;
  let totalBtuh = frostBtuh;
  let beyondCeiling = frostBtuh > ceilingBtuh;
  if (beyondCeiling) {
    numbers[COIL.atF] = atCeilingF;
    surfaceEnthalpyAt(numbers);
    beyondCeiling = contactLbPerH * (enteringEnthalpy - (numbers[COIL.surfaceEnthalpy] ?? 0)) > ceilingBtuh;
  }
  if (beyondCeiling) {
    limitedBy = COIL_LIMIT.ceiling;
    totalBtuh = ceilingBtuh;
    numbers[COIL.surfaceEnthalpy] = enteringEnthalpy - ceilingBtuh / contactLbPerH;
    surfaceTemperature(numbers);
  } else if (frostBtuh < minimumBtuh) {
    limitedBy = COIL_LIMIT.frost;
    compressorShare = frostBtuh / minimumBtuh;
    numbers[COIL.adpF] = frostLimitF;
  } else if (leastF + coil.approachSlopeFPerBtuh * frostBtuh < frostLimitF) {
    limitedBy = COIL_LIMIT.frost;
    numbers[COIL.adpF] = frostLimitF;
  } else {
    heldAdp(coil, numbers);
    const adpF = numbers[COIL.adpF] ?? 0;
    numbers[COIL.atF] = adpF;
    surfaceEnthalpyAt(numbers);
    totalBtuh = contactLbPerH * (enteringEnthalpy - (numbers[COIL.surfaceEnthalpy] ?? 0));
    if (totalBtuh < minimumBtuh) {
      limitedBy = COIL_LIMIT.minimum;
      totalBtuh = minimumBtuh;
      numbers[COIL.surfaceEnthalpy] = enteringEnthalpy - minimumBtuh / contactLbPerH;
      numbers[COIL.startF] = adpF;
      surfaceTemperature(numbers);
    }
  }
  numbers[COIL.totalBtuh] = totalBtuh;
  writeAir(coil, numbers);
  numbers[COIL.limitedBy] = limitedBy;
  numbers[COIL.compressorShare] = compressorShare;
}

/**
 * The air that leaves when the coil takes a known capacity from it, with its surface free to follow.
 *
 * Used for the minutes after a stage change, when capacity is set by the compressor and not by the held temperature.
 *
 * @param coil - From {@link coilAtFlow}; the frost limit lies in 20…60 °F.
 * @param numbers - From `coilNumbers`: holds the entering air and, as `ceilingBtuh`, the capacity taken from it; receives the
 * result.
 * @returns Whether there is one: no surface above the frost limit may take that much, and then only what is asked stands in `numbers`.
 * @throws {@link NotConvergedError} when a surface temperature does not settle.
 * @see EnergyPlus Engineering Reference for BF and A0 (published).
 */
export function solveCoilAtCapacity(coil: CoilAtFlow, numbers: Float64Array): boolean {
  const enteringDbF = numbers[COIL.enteringDbF] ?? 0;
  const enteringHumidityRatio = numbers[COIL.enteringHumidityRatio] ?? 0;
  const totalBtuh = numbers[COIL.ceilingBtuh] ?? 0;
  const enteringEnthalpy = moistEnthalpy(enteringDbF, enteringHumidityRatio);
  const surface = enteringEnthalpy - totalBtuh / coil.contactLbPerH;
  if (surface < moistEnthalpy(coil.frostLimitF, Math.min(coil.frostHumidityRatio, enteringHumidityRatio))) {
    return false;
  }
  numbers[COIL.enteringEnthalpy] = enteringEnthalpy;
  numbers[COIL.surfaceEnthalpy] = surface;
  numbers[COIL.startF] = enteringDbF;
  surfaceTemperature(numbers);
  numbers[COIL.totalBtuh] = totalBtuh;
  writeAir(coil, numbers);
  numbers[COIL.limitedBy] = COIL_LIMIT.ceiling;
  numbers[COIL.compressorShare] = 1;
  return true;
}

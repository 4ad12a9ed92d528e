import { exp } from "../exact-functions";
import { COIL, COIL_LIMIT, type CoilConstants } from "./coil-numbers";
import { heldAdpF, surfaceEnthalpy, surfaceTemperatureF } from "./coil-surface";
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
 * One steady state of the coil.
 *
 * @param coil - Constants; the frost limit and the held temperature lie in 20…80 °F.
 * @param enteringDbF - °F, 40…120, above the frost limit.
 * @param enteringHumidityRatio - lb/lb, 0 to saturation at the entering dry bulb.
 * @param dryAirLbPerH - Flow of dry air, lb/h, more than 0.
 * @param ceilingBtuh - Most the compressor can give now, more than 0.
 * @param minimumBtuh - Least it can give without cycling, 0…ceiling.
 * @param out - Receives the result, {@link COIL_OUTPUTS} numbers. Its old ADP is where the solution starts from, which from
 * minute to minute saves half the steps and moves the answer by less than 1e-9 °F; a fresh array of zeros is fine.
 * @throws {@link NotConvergedError} when a surface temperature does not settle.
 * @see EnergyPlus Engineering Reference for BF and A0 (published); the control law from the balances (physics).
 */
export function solveCoil(
  coil: CoilConstants,
  enteringDbF: number,
  enteringHumidityRatio: number,
  dryAirLbPerH: number,
  ceilingBtuh: number,
  minimumBtuh: number,
  out: Float64Array,
): void {
  const { pressurePsia, frostLimitF } = coil;
  const bypassFactor = exp(-coil.a0LbPerH / dryAirLbPerH);
  const contactLbPerH = dryAirLbPerH * (1 - bypassFactor);
  const enteringEnthalpy = moistEnthalpy(enteringDbF, enteringHumidityRatio);
  const frostBtuh =
    contactLbPerH *
    (enteringEnthalpy - moistEnthalpy(frostLimitF, Math.min(coil.frostHumidityRatio, enteringHumidityRatio)));

  // Where the control would hold the surface if the compressor ran at its ceiling. Capacity falls with surface temperature, so
  // the capacity there tells whether the held balance lies beyond the ceiling, without solving it first.
  const leastF = coil.heldTemperatureF + coil.fixedApproachF;
  const atCeilingF = Math.min(leastF + coil.approachSlopeFPerBtuh * ceilingBtuh, enteringDbF);
  const lastAdpF = out[COIL.adpF] ?? 0;
  const startF = lastAdpF > frostLimitF && lastAdpF < enteringDbF ? lastAdpF : atCeilingF;

  let limitedBy: number = COIL_LIMIT.held;
  let compressorShare = 1;
  let totalBtuh = frostBtuh;
  let adpF = frostLimitF;
  if (
    frostBtuh > ceilingBtuh &&
    contactLbPerH * (enteringEnthalpy - surfaceEnthalpy(atCeilingF, enteringHumidityRatio, pressurePsia)) >
      ceilingBtuh
  ) {
    limitedBy = COIL_LIMIT.ceiling;
    totalBtuh = ceilingBtuh;
    adpF = surfaceTemperatureF(
      enteringEnthalpy - ceilingBtuh / contactLbPerH,
      enteringHumidityRatio,
      pressurePsia,
      startF,
      enteringDbF,
    );
  } else if (frostBtuh < minimumBtuh) {
    limitedBy = COIL_LIMIT.frost;
    compressorShare = frostBtuh / minimumBtuh;
  } else if (leastF + coil.approachSlopeFPerBtuh * frostBtuh < frostLimitF) {
    limitedBy = COIL_LIMIT.frost;
  } else {
    adpF = heldAdpF(
      coil,
      enteringDbF,
      enteringHumidityRatio,
      enteringEnthalpy,
      contactLbPerH,
      leastF,
      startF,
    );
    totalBtuh =
      contactLbPerH * (enteringEnthalpy - surfaceEnthalpy(adpF, enteringHumidityRatio, pressurePsia));
    if (totalBtuh < minimumBtuh) {
      limitedBy = COIL_LIMIT.minimum;
      totalBtuh = minimumBtuh;
      adpF = surfaceTemperatureF(
        enteringEnthalpy - minimumBtuh / contactLbPerH,
        enteringHumidityRatio,
        pressurePsia,
        adpF,
        enteringDbF,
      );
    }
  }

  writeAir(
    pressurePsia,
    enteringDbF,
    enteringHumidityRatio,
    enteringEnthalpy,
    dryAirLbPerH,
    bypassFactor,
    adpF,
    totalBtuh,
    out,
  );
  out[COIL.limitedBy] = limitedBy;
  out[COIL.compressorShare] = compressorShare;
}

/**
 * The air that leaves when the coil takes a known capacity from it, with its surface free to follow.
 *
 * Used for the minutes after a stage change, when capacity is set by the compressor and not by the held temperature.
 *
 * @param coil - Constants; the frost limit lies in 20…60 °F.
 * @param enteringDbF - °F, 40…120, above the frost limit.
 * @param enteringHumidityRatio - lb/lb, 0 to saturation at the entering dry bulb.
 * @param dryAirLbPerH - Flow of dry air, lb/h, more than 0.
 * @param totalBtuh - Capacity taken from the air, Btu/h, more than 0.
 * @param out - Receives the result, {@link COIL_OUTPUTS} numbers.
 * @returns The apparatus dew point, °F; −Infinity when no surface above {@link frostLimitF} takes that much, and `out` is then
 * untouched.
 * @throws {@link NotConvergedError} when a surface temperature does not settle.
 * @see EnergyPlus Engineering Reference for BF and A0 (published).
 */
export function solveCoilAtCapacity(
  coil: CoilConstants,
  enteringDbF: number,
  enteringHumidityRatio: number,
  dryAirLbPerH: number,
  totalBtuh: number,
  out: Float64Array,
): number {
  const bypassFactor = exp(-coil.a0LbPerH / dryAirLbPerH);
  const contactLbPerH = dryAirLbPerH * (1 - bypassFactor);
  const enteringEnthalpy = moistEnthalpy(enteringDbF, enteringHumidityRatio);
  const surface = enteringEnthalpy - totalBtuh / contactLbPerH;
  if (surface < moistEnthalpy(coil.frostLimitF, Math.min(coil.frostHumidityRatio, enteringHumidityRatio))) {
    return Number.NEGATIVE_INFINITY;
  }
  const adpF = surfaceTemperatureF(
    surface,
    enteringHumidityRatio,
    coil.pressurePsia,
    enteringDbF,
    enteringDbF,
  );
  writeAir(
    coil.pressurePsia,
    enteringDbF,
    enteringHumidityRatio,
    enteringEnthalpy,
    dryAirLbPerH,
    bypassFactor,
    adpF,
    totalBtuh,
    out,
  );
  out[COIL.limitedBy] = COIL_LIMIT.ceiling;
  out[COIL.compressorShare] = 1;
  return adpF;
}

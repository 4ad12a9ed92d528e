import { type MoistAir, moistAir } from "../air";
import { cfm, requireRange } from "../units";
import { COLDEST_SATURATION_F, dryBulbAt, fastSaturationHumidityRatio } from "./saturation";

/**
 * Air that leaves a coil whose heat and water are known, by the balance of both.
 *
 * @param input - `entering` air 40 to 120 °F; `airflowCfm` at the entering state, 50 to 20,000; `totalBtuh` 0 to 1,000,000 Btu/h;
 * `moistureLbPerH` taken from the air, 0 to 500 lb/h.
 * @returns The leaving air; °F, lb/lb and psia in its fields. `null` where the balance is no air: wetter than saturated, without
 * water, or below −10 °F. Figures of a table that do not belong together do that.
 * @throws {@link OutOfRangeError} outside those ranges.
 * @see Balances of enthalpy and water over the coil (physics; the rated example of the tests is computed).
 */
export function airAfterCoil(input: {
  readonly entering: MoistAir;
  readonly airflowCfm: number;
  readonly totalBtuh: number;
  readonly moistureLbPerH: number;
}): MoistAir | null {
  const { entering, totalBtuh, moistureLbPerH } = input;
  requireRange("entering.dryBulbF", entering.dryBulbF, "°F", 40, 120);
  requireRange("airflowCfm", input.airflowCfm, "cfm", 50, 20_000);
  requireRange("totalBtuh", totalBtuh, "Btu/h", 0, 1e6);
  requireRange("moistureLbPerH", moistureLbPerH, "lb/h", 0, 500);
  const dryAirLbPerH = (cfm(input.airflowCfm) * 60) / entering.specificVolumeFt3PerLb;
  const { dryBulbF, humidityRatio } = coilBalance(entering, dryAirLbPerH, totalBtuh, moistureLbPerH);
  if (!(humidityRatio > 1e-6 && dryBulbF > COLDEST_SATURATION_F)) return null;
  const { pressurePsia } = entering;
  if (humidityRatio > fastSaturationHumidityRatio(dryBulbF, pressurePsia)) return null;
  return moistAir({ dryBulbF, humidityRatio, pressurePsia });
}

/**
 * The numbers of that balance, unchecked.
 *
 * @param entering - Entering air.
 * @param dryAirLbPerH - Flow of dry air, lb/h, more than 0.
 * @param totalBtuh - Heat taken, −1,000,000 to 1,000,000 Btu/h.
 * @param moistureLbPerH - Water taken, −500 to 500 lb/h.
 * @returns Enthalpy in Btu/lb, humidity ratio in lb/lb and dry bulb in °F of what leaves; any of them may be impossible.
 * @see Balances of enthalpy and water over the coil (physics).
 */
export function coilBalance(
  entering: MoistAir,
  dryAirLbPerH: number,
  totalBtuh: number,
  moistureLbPerH: number,
): { readonly enthalpyBtuPerLb: number; readonly humidityRatio: number; readonly dryBulbF: number } {
  const enthalpyBtuPerLb = entering.enthalpyBtuPerLb - totalBtuh / dryAirLbPerH;
  const humidityRatio = entering.humidityRatio - moistureLbPerH / dryAirLbPerH;
  return { enthalpyBtuPerLb, humidityRatio, dryBulbF: dryBulbAt(enthalpyBtuPerLb, humidityRatio) };
}

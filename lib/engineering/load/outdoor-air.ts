import { type MoistAir, QUICK_TOTAL_FACTOR, requireSamePressure, SEA_LEVEL_PRESSURE_PSIA } from "../air";
import { type Btuh, btuh, cfm, type LbPerH, lbPerH } from "../units";

/** What outdoor air brings into the house. Negative: it takes out. */
export type OutdoorAirLoad = {
  readonly dryAirLbPerH: LbPerH;
  readonly totalBtuh: Btuh;
  readonly sensibleBtuh: Btuh;
  readonly latentBtuh: Btuh;
  readonly moistureLbPerH: LbPerH;
};

/**
 * Heat and water that outdoor air brings into a house.
 *
 * Ventilation airflow is counted as standard air corrected for the site's pressure (4.5 lb/h for each cfm), as fans
 * and hoods are. Total is the full enthalpy difference: the water becomes vapour of the room, not yet condensate.
 *
 * @param input - `airflowCfm` 0 to 100,000 cfm; `outdoor` and `indoor` air at one pressure.
 * @returns Heat, Btu/h, and water, lb/h.
 * @throws {@link OutOfRangeError} for an airflow outside its range; {@link ImpossibleStateError} for unequal pressures.
 * @see Balance of heat and water (physics).
 */
export function outdoorAirLoad(input: {
  readonly airflowCfm: number;
  readonly outdoor: MoistAir;
  readonly indoor: MoistAir;
}): OutdoorAirLoad {
  const { outdoor, indoor } = input;
  requireSamePressure(outdoor, indoor, ["outdoor", "indoor"]);
  const density = indoor.pressurePsia / SEA_LEVEL_PRESSURE_PSIA;
  const dryAirLbPerH = lbPerH(QUICK_TOTAL_FACTOR * cfm(input.airflowCfm) * density);
  const totalBtuh = btuh(dryAirLbPerH * (outdoor.enthalpyBtuPerLb - indoor.enthalpyBtuPerLb));
  const sensibleBtuh = btuh(
    dryAirLbPerH * (0.24 + 0.444 * outdoor.humidityRatio) * (outdoor.dryBulbF - indoor.dryBulbF),
  );
  return {
    dryAirLbPerH,
    totalBtuh,
    sensibleBtuh,
    latentBtuh: btuh(totalBtuh - sensibleBtuh),
    moistureLbPerH: lbPerH(dryAirLbPerH * (outdoor.humidityRatio - indoor.humidityRatio)),
  };
}

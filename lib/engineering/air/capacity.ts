import { type Btuh, btuh, cfm, type LbPerH, lbPerH, type Ratio, ratio } from "../units";
import type { MoistAir } from "./moist-air";
import { requireSamePressure } from "./same-pressure";

/** What a coil does to the air that crosses it. Cooling and drying are positive. */
export type AirSideCapacity = {
  /** Flow of dry air, lb/h. */
  readonly dryAirLbPerH: LbPerH;
  /** Heat taken by the coil, Btu/h: sensible + latent. */
  readonly totalBtuh: Btuh;
  readonly sensibleBtuh: Btuh;
  readonly latentBtuh: Btuh;
  /** Water taken from the air; negative when the air got wetter. */
  readonly moistureLbPerH: LbPerH;
  /** Sensible over total; `null` when there is no net cooling to split. */
  readonly sensibleRatio: Ratio | null;
  /** Heat that leaves with the drain water, Btu/h. The plain enthalpy difference of the air is `totalBtuh` plus this. */
  readonly condensateBtuh: Btuh;
};

/** Below this share of the sensible heat the total is a difference of near-equals and has no meaningful ratio. */
const LEAST_TOTAL_SHARE = 0.01;

/**
 * Heat and water a coil takes from the air, from the states before and after it.
 *
 * Total is the enthalpy difference less the heat in the drain water, which leaves at the leaving dry bulb. Sensible is at
 * the entering humidity ratio, so that latent is exactly the water times its heat of vaporisation at the leaving temperature.
 *
 * @param input - `airflowCfm` 0 to 100,000 cfm counted at the entering state; `entering` and `leaving` air at one pressure.
 * @returns Flows in lb/h and heat in Btu/h.
 * @throws {@link OutOfRangeError} for an airflow outside its range.
 * @throws {@link ImpossibleStateError} when the two pressures differ by more than 1 %.
 * @see ASHRAE Handbook, Fundamentals 2017, ch. 1, moist air cooling and dehumidification (published example in tests).
 */
export function airSideCapacity(input: {
  readonly airflowCfm: number;
  readonly entering: MoistAir;
  readonly leaving: MoistAir;
}): AirSideCapacity {
  const { entering, leaving } = input;
  requireSamePressure(entering, leaving, ["entering", "leaving"]);

  const dryAirLbPerH = lbPerH((cfm(input.airflowCfm) * 60) / entering.specificVolumeFt3PerLb);
  const moistureLbPerH = lbPerH(dryAirLbPerH * (entering.humidityRatio - leaving.humidityRatio));
  // Liquid water at 32 °F has no enthalpy and gains 1 Btu/lb·°F. Below 32 °F it stays as frost: no drain.
  const condensateBtuh = btuh(
    moistureLbPerH > 0 && leaving.dryBulbF > 32 ? moistureLbPerH * (leaving.dryBulbF - 32) : 0,
  );
  const totalBtuh = btuh(
    dryAirLbPerH * (entering.enthalpyBtuPerLb - leaving.enthalpyBtuPerLb) - condensateBtuh,
  );
  const sensibleBtuh = btuh(
    dryAirLbPerH * (0.24 + 0.444 * entering.humidityRatio) * (entering.dryBulbF - leaving.dryBulbF),
  );
  return {
    dryAirLbPerH,
    totalBtuh,
    sensibleBtuh,
    latentBtuh: btuh(totalBtuh - sensibleBtuh),
    moistureLbPerH,
    sensibleRatio:
      totalBtuh > LEAST_TOTAL_SHARE * Math.abs(sensibleBtuh) ? ratio(sensibleBtuh / totalBtuh) : null,
    condensateBtuh,
  };
}

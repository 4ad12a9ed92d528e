import { type Btuh, btuh, cfm, type LbPerH, lbPerH, quantity } from "../units";
import { GRAINS_PER_POUND } from "./psychrometrics";

/*
 * The trade's quick checks, to be shown beside the exact result and never instead of it. Each constant is
 * 60 min/h times standard air, 0.075 lb/ft³; the density ratio corrects it for the site.
 */

/** Btu/h per cfm and °F: 60 · 0.075 · 0.24. */
export const QUICK_SENSIBLE_FACTOR = 1.08;
/** lb/h per cfm, also Btu/h per cfm and Btu/lb: 60 · 0.075. */
export const QUICK_TOTAL_FACTOR = 4.5;
/** Btu/h per cfm and gr/lb: 4.5 · 1061 / 7000, to two places as the trade writes it. */
export const QUICK_LATENT_FACTOR = 0.68;

const density = quantity("densityRatio", "ratio", 0.4, 1.2);
const temperatureDifference = quantity("temperatureDifferenceF", "Δ°F", -200, 200);
const enthalpyDifference = quantity("enthalpyDifferenceBtuPerLb", "Btu/lb", -200, 200);
const moistureDifference = quantity("moistureDifferenceGrainsPerLb", "gr/lb", -2_000, 2_000);

type QuickInput = { readonly airflowCfm: number; readonly densityRatio: number };

/**
 * Quick check of sensible heat, 1.08 · cfm · ΔT · density ratio.
 *
 * @param input - `airflowCfm` 0 to 100,000 cfm; `temperatureDifferenceF` ±200 °F; `densityRatio` 0.4 to 1.2.
 * @returns Sensible heat, Btu/h.
 * @throws {@link OutOfRangeError} outside those ranges.
 * @see The product of the constants above (computed).
 */
export function quickSensibleBtuh(input: QuickInput & { readonly temperatureDifferenceF: number }): Btuh {
  return btuh(
    QUICK_SENSIBLE_FACTOR *
      cfm(input.airflowCfm) *
      temperatureDifference(input.temperatureDifferenceF) *
      density(input.densityRatio),
  );
}

/**
 * Quick check of total heat, 4.5 · cfm · Δh · density ratio.
 *
 * @param input - `airflowCfm` 0 to 100,000 cfm; `enthalpyDifferenceBtuPerLb` ±200 Btu/lb; `densityRatio` 0.4 to 1.2.
 * @returns Total heat, Btu/h.
 * @throws {@link OutOfRangeError} outside those ranges.
 * @see The product of the constants above (computed).
 */
export function quickTotalBtuh(input: QuickInput & { readonly enthalpyDifferenceBtuPerLb: number }): Btuh {
  return btuh(
    QUICK_TOTAL_FACTOR *
      cfm(input.airflowCfm) *
      enthalpyDifference(input.enthalpyDifferenceBtuPerLb) *
      density(input.densityRatio),
  );
}

/**
 * Quick check of latent heat, 0.68 · cfm · Δgrains · density ratio.
 *
 * @param input - `airflowCfm` 0 to 100,000 cfm; `moistureDifferenceGrainsPerLb` ±2,000 gr/lb; `densityRatio` 0.4 to 1.2.
 * @returns Latent heat, Btu/h.
 * @throws {@link OutOfRangeError} outside those ranges.
 * @see The product of the constants above (computed).
 */
export function quickLatentBtuh(
  input: QuickInput & { readonly moistureDifferenceGrainsPerLb: number },
): Btuh {
  return btuh(
    QUICK_LATENT_FACTOR *
      cfm(input.airflowCfm) *
      moistureDifference(input.moistureDifferenceGrainsPerLb) *
      density(input.densityRatio),
  );
}

/**
 * Quick check of moisture removal, 4.5 · cfm · ΔW · density ratio, with ΔW from grains.
 *
 * @param input - `airflowCfm` 0 to 100,000 cfm; `moistureDifferenceGrainsPerLb` ±2,000 gr/lb; `densityRatio` 0.4 to 1.2.
 * @returns Water, lb/h.
 * @throws {@link OutOfRangeError} outside those ranges.
 * @see The product of the constants above (computed).
 */
export function quickMoistureLbPerH(
  input: QuickInput & { readonly moistureDifferenceGrainsPerLb: number },
): LbPerH {
  return lbPerH(
    (QUICK_TOTAL_FACTOR *
      cfm(input.airflowCfm) *
      moistureDifference(input.moistureDifferenceGrainsPerLb) *
      density(input.densityRatio)) /
      GRAINS_PER_POUND,
  );
}

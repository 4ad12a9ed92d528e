import { ImpossibleStateError } from "../errors";
import { type Btuh, btuh, quantity, type Ratio, ratio } from "../units";

/** Btu/h in a ton of refrigeration, by definition. */
export const BTUH_PER_TON = 12_000;

const sensible = quantity("sensibleCoolingBtuh", "Btu/h", 0, 5_000_000);
const latent = quantity("latentCoolingBtuh", "Btu/h", 0, 5_000_000);
const floorArea = quantity("floorAreaFt2", "ft²", 100, 100_000);

/** The cooling load in the figures people compare. None of them is a verdict. */
export type LoadTotals = {
  readonly totalBtuh: Btuh;
  readonly sensibleRatio: Ratio;
  readonly tons: number;
  /** For information only: a good house has many. */
  readonly floorAreaPerTonFt2: number;
};

/**
 * Total, sensible ratio, tons and floor area per ton of a cooling load.
 *
 * @param load - `sensibleCoolingBtuh` and `latentCoolingBtuh` 0 to 5 million Btu/h, not both 0; `floorAreaFt2` 100 to 100,000 ft².
 * @returns Btu/h, ratio, tons, ft² per ton.
 * @throws {@link OutOfRangeError} outside those ranges; {@link ImpossibleStateError} when there is no load.
 * @see Definitions (physics); 1 ton = 12,000 Btu/h.
 */
export function loadTotals(load: {
  readonly sensibleCoolingBtuh: number;
  readonly latentCoolingBtuh: number;
  readonly floorAreaFt2: number;
}): LoadTotals {
  const sensibleBtuh = sensible(load.sensibleCoolingBtuh);
  const totalBtuh = btuh(sensibleBtuh + latent(load.latentCoolingBtuh));
  if (totalBtuh < 1) {
    throw new ImpossibleStateError("the cooling load is zero; enter the sensible and latent load", [
      "sensibleCoolingBtuh",
      "latentCoolingBtuh",
    ]);
  }
  const tons = totalBtuh / BTUH_PER_TON;
  return {
    totalBtuh,
    sensibleRatio: ratio(sensibleBtuh / totalBtuh),
    tons,
    floorAreaPerTonFt2: floorArea(load.floorAreaFt2) / tons,
  };
}

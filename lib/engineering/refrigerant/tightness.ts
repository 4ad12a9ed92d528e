import { type Psig, quantity } from "../units";

const RANKINE_OFFSET_F = 459.67;
const testPressure = quantity("startPressurePsig", "psig", 0, 1_000);
const startTemp = quantity("startTempF", "°F", -40, 160);
const endTemp = quantity("endTempF", "°F", -40, 160);
const sitePressure = quantity("sitePressurePsia", "psia", 6, 17);

/**
 * The gauge reading a tight nitrogen test would show after the temperature has changed.
 *
 * Absolute pressure goes with absolute temperature; a gauge cannot tell cooling from a leak.
 *
 * @param test - `startPressurePsig` 0 to 1,000 psig; `startTempF` and `endTempF` −40 to 160 °F, of the gas in the
 * lines; `sitePressurePsia` 6 to 17 psia.
 * @returns Expected reading, psig.
 * @throws {@link OutOfRangeError} outside those ranges.
 * @see Ideal gas at constant volume (recalled).
 */
export function expectedTestPressurePsig(test: {
  readonly startPressurePsig: number;
  readonly startTempF: number;
  readonly endTempF: number;
  readonly sitePressurePsia: number;
}): Psig {
  const site = sitePressure(test.sitePressurePsia);
  const ratio = (endTemp(test.endTempF) + RANKINE_OFFSET_F) / (startTemp(test.startTempF) + RANKINE_OFFSET_F);
  return ((testPressure(test.startPressurePsig) + site) * ratio - site) as Psig;
}

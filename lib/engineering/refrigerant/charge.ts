import { type FahrenheitDifference, fahrenheitDifference, type Ounces, ounces, quantity } from "../units";
import { saturationAtGaugeF } from "./gauge";
import type { Refrigerant } from "./saturation";

const lineTemp = (field: string) => quantity(field, "°F", -60, 300);
const suctionLine = lineTemp("suctionLineF");
const liquidLine = lineTemp("liquidLineF");

/**
 * Superheat: suction line temperature above the dew temperature at suction pressure.
 *
 * @param reading - `suctionPressurePsig` within the table; `suctionLineF` −60 to 300 °F; `sitePressurePsia` 6 to 17 psia.
 * @returns Superheat, °F. Negative means the readings disagree: vapour cannot be colder than its dew temperature.
 * @throws {@link OutOfRangeError} outside those ranges; {@link ImpossibleStateError} for an unknown refrigerant.
 * @see Definition (physics); saturation table (computed).
 */
export function superheatF(reading: {
  readonly refrigerant: Refrigerant;
  readonly suctionPressurePsig: number;
  readonly suctionLineF: number;
  readonly sitePressurePsia: number;
}): FahrenheitDifference {
  const dewF = saturationAtGaugeF({
    field: "suctionPressurePsig",
    gaugePsig: reading.suctionPressurePsig,
    sitePressurePsia: reading.sitePressurePsia,
    refrigerant: reading.refrigerant,
    side: "dew",
  });
  return fahrenheitDifference(suctionLine(reading.suctionLineF) - dewF);
}

/**
 * Subcooling: liquid line temperature below the bubble temperature at liquid pressure.
 *
 * @param reading - `liquidPressurePsig` within the table; `liquidLineF` −60 to 300 °F; `sitePressurePsia` 6 to 17 psia.
 * @returns Subcooling, °F. Negative means the readings disagree: liquid cannot be hotter than its bubble temperature.
 * @throws {@link OutOfRangeError} outside those ranges; {@link ImpossibleStateError} for an unknown refrigerant.
 * @see Definition (physics); saturation table (computed).
 */
export function subcoolingF(reading: {
  readonly refrigerant: Refrigerant;
  readonly liquidPressurePsig: number;
  readonly liquidLineF: number;
  readonly sitePressurePsia: number;
}): FahrenheitDifference {
  const bubbleF = saturationAtGaugeF({
    field: "liquidPressurePsig",
    gaugePsig: reading.liquidPressurePsig,
    sitePressurePsia: reading.sitePressurePsia,
    refrigerant: reading.refrigerant,
    side: "bubble",
  });
  return fahrenheitDifference(bubbleF - liquidLine(reading.liquidLineF));
}

const indoorWetBulb = quantity("indoorWetBulbF", "°F", 50, 80);
// Below 55 °F outdoors the method is not valid; 115 °F is where charging charts end.
const outdoorDryBulb = quantity("outdoorDryBulbF", "°F", 55, 115);
/** Below this a fixed-orifice charge cannot be judged by superheat: liquid may be reaching the compressor. */
export const LEAST_TARGET_SUPERHEAT_F = 5;
const targetRange = quantity("target superheat", "Δ°F", LEAST_TARGET_SUPERHEAT_F, 200);

/**
 * Target superheat of a system with a fixed orifice, `(3·indoor wet bulb − 80 − outdoor dry bulb)/2`.
 *
 * Within ±3 °F of the usual chart. The maker's chart wins.
 *
 * @param conditions - `indoorWetBulbF` 50 to 80 °F at the return; `outdoorDryBulbF` 55 to 115 °F at the condenser.
 * @returns Target superheat, °F. At least 5.
 * @throws {@link OutOfRangeError} outside those ranges, or when the target is below 5 °F: no valid test then.
 * @see Fixed-orifice charging formula and chart (published; upper temperature ends unverified).
 */
export function targetSuperheatF(conditions: {
  readonly indoorWetBulbF: number;
  readonly outdoorDryBulbF: number;
}): FahrenheitDifference {
  const wetBulbF = indoorWetBulb(conditions.indoorWetBulbF);
  const outdoorF = outdoorDryBulb(conditions.outdoorDryBulbF);
  return targetRange((3 * wetBulbF - 80 - outdoorF) / 2);
}

const lineLength = quantity("lineLengthFt", "ft", 0, 500);
const includedLength = quantity("includedLengthFt", "ft", 0, 500);
const chargePerFoot = quantity("ouncesPerFt", "oz/ft", 0, 10);

/**
 * Charge to add for a line set longer than the length the factory charge covers.
 *
 * @param line - `lineLengthFt` and `includedLengthFt` 0 to 500 ft; `ouncesPerFt` 0 to 10 oz/ft; the last two from the maker.
 * @returns Charge to add, oz; negative means to take out.
 * @throws {@link OutOfRangeError} outside those ranges.
 * @see Maker's instructions; `(length − included) × oz/ft` (computed).
 */
export function lineSetAdjustmentOz(line: {
  readonly lineLengthFt: number;
  readonly includedLengthFt: number;
  readonly ouncesPerFt: number;
}): Ounces {
  return ounces(
    (lineLength(line.lineLengthFt) - includedLength(line.includedLengthFt)) * chargePerFoot(line.ouncesPerFt),
  );
}

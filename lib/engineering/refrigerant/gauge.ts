import { OutOfRangeError } from "../errors";
import { type Fahrenheit, type Psia, type Psig, psia, quantity } from "../units";
import { type Refrigerant, type SaturationSide, saturationRangePsia, saturationTempF } from "./saturation";

const sitePressure = quantity("sitePressurePsia", "psia", 6, 17);

/**
 * Absolute pressure from a gauge reading and the site's atmospheric pressure.
 *
 * A gauge reads against the air around it: at 5,280 ft the same reading is 2.6 psi less refrigerant pressure than at sea level.
 *
 * @param gaugePsig - Gauge reading, psig. From the site's full vacuum to 9,900.
 * @param sitePressurePsia - Atmospheric pressure, psia. 6 to 17.
 * @returns Absolute pressure, psia.
 * @throws {@link OutOfRangeError} outside those ranges.
 * @see Definition of gauge pressure (physics).
 */
export function absolutePressurePsia(gaugePsig: number, sitePressurePsia: number): Psia {
  const site = sitePressure(sitePressurePsia);
  if (!(gaugePsig >= -site && gaugePsig <= 9_900)) {
    throw new OutOfRangeError("gaugePsig", gaugePsig, "psig", -site, 9_900);
  }
  return psia(gaugePsig + site);
}

/**
 * Gauge reading from absolute pressure and the site's atmospheric pressure.
 *
 * @param pressurePsia - Absolute pressure, psia. 0 to 10,000.
 * @param sitePressurePsia - Atmospheric pressure, psia. 6 to 17.
 * @returns Gauge pressure, psig.
 * @throws {@link OutOfRangeError} outside those ranges.
 * @see Definition of gauge pressure (physics).
 */
export function gaugePressurePsig(pressurePsia: number, sitePressurePsia: number): Psig {
  return (psia(pressurePsia) - sitePressure(sitePressurePsia)) as Psig;
}

/**
 * Saturation temperature at a gauge reading, whose refusal names the field that was read.
 *
 * @param reading - `gaugePsig` −14.7 psig and up, within the table with the site pressure; `sitePressurePsia` 6 to 17 psia;
 * `field` for the refusal.
 * @returns °F.
 * @throws {@link OutOfRangeError} for an input outside its range, naming the field.
 * @see As {@link saturationTempF} (computed).
 */
export function saturationAtGaugeF(reading: {
  readonly field: string;
  readonly gaugePsig: number;
  readonly sitePressurePsia: number;
  readonly refrigerant: Refrigerant;
  readonly side: SaturationSide;
}): Fahrenheit {
  const site = sitePressure(reading.sitePressurePsia);
  const range = saturationRangePsia(reading.refrigerant, reading.side);
  const absolute = reading.gaugePsig + site;
  if (!(absolute >= range.minPsia && absolute <= range.maxPsia)) {
    throw new OutOfRangeError(
      reading.field,
      reading.gaugePsig,
      "psig",
      range.minPsia - site,
      range.maxPsia - site,
    );
  }
  return saturationTempF(reading.refrigerant, absolute, reading.side);
}

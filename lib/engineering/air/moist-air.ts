import { ImpossibleStateError } from "../errors";
import {
  type BtuPerLb,
  btuPerLb,
  type Fahrenheit,
  type Ft3PerLb,
  ft3PerLb,
  type GrainsPerLb,
  type HumidityRatio,
  type Percent,
  type Psia,
  quantity,
} from "../units";
import { humidityRatioFrom, type MoistAirInput, readMoisture } from "./given-moisture";
import { GRAINS_PER_POUND, psychrometrics } from "./psychrometrics";
import { solveWetBulbF } from "./wet-bulb";

/** Everything usually asked about moist air, per pound of dry air. */
export type MoistAir = {
  readonly dryBulbF: Fahrenheit;
  readonly pressurePsia: Psia;
  readonly humidityRatio: HumidityRatio;
  readonly grainsPerLb: GrainsPerLb;
  readonly relativeHumidityPct: Percent;
  readonly wetBulbF: Fahrenheit;
  /** Frost point below 32 °F. */
  readonly dewPointF: Fahrenheit;
  readonly enthalpyBtuPerLb: BtuPerLb;
  readonly specificVolumeFt3PerLb: Ft3PerLb;
};

const dryBulb = quantity("dryBulbF", "°F", -100, 200);
const sitePressure = quantity("pressurePsia", "psia", 6, 17);
const saturationTemp = quantity("tempF", "°F", -148, 392);

/**
 * The full state of moist air from dry bulb, pressure and one measure of its moisture.
 *
 * Ideal-gas equations: humidity ratio sits up to about 0.5 % below real air near saturation.
 * Below 32 °F the dew point is a frost point and the wet bulb an iced bulb.
 *
 * @param input - `dryBulbF` −100 to 200 °F; `pressurePsia` 6 to 17 psia; and exactly one of
 * `relativeHumidityPct` (above 0 to 100 %), `wetBulbF` (°F), `dewPointF` (−148 °F up) or `humidityRatio` (1e-7 to 1 lb/lb).
 * @returns The state. Whatever was given comes back unchanged.
 * @throws {@link OutOfRangeError} outside those ranges, or for air drier than 1e-7 lb/lb.
 * @throws {@link ImpossibleStateError} when the fields contradict each other: a wet bulb or dew point above the dry bulb,
 * more water than saturated air holds, a wet bulb below that of bone-dry air, none or several moisture measures.
 * @see ASHRAE Handbook, Fundamentals 2017, ch. 1 (published), through psychrolib.
 */
export function moistAir(input: MoistAirInput): MoistAir {
  const dryBulbF = dryBulb(input.dryBulbF);
  const pressurePsia = sitePressure(input.pressurePsia);
  const given = readMoisture(input);
  const saturationPsia = psychrometrics.GetSatVapPres(dryBulbF);
  if (saturationPsia >= pressurePsia) {
    throw new ImpossibleStateError(
      `dryBulbF ${dryBulbF} °F is above the boiling point of water at pressurePsia ${pressurePsia} psia; check both`,
      ["dryBulbF", "pressurePsia"],
    );
  }

  const humidityRatio = humidityRatioFrom(given, dryBulbF, pressurePsia, saturationPsia);
  const vapourPsia = psychrometrics.GetVapPresFromHumRatio(humidityRatio, pressurePsia);
  const relativeHumidityPct =
    given.field === "relativeHumidityPct" ? given.value : Math.min((100 * vapourPsia) / saturationPsia, 100);
  const dewPointF =
    given.field === "dewPointF"
      ? given.value
      : psychrometrics.GetTDewPointFromVapPres(dryBulbF, Math.min(vapourPsia, saturationPsia));
  const wetBulbF =
    given.field === "wetBulbF"
      ? given.value
      : solveWetBulbF(dryBulbF, dewPointF, humidityRatio, pressurePsia);

  return {
    dryBulbF,
    pressurePsia,
    humidityRatio,
    grainsPerLb: (humidityRatio * GRAINS_PER_POUND) as GrainsPerLb,
    relativeHumidityPct: relativeHumidityPct as Percent,
    wetBulbF: wetBulbF as Fahrenheit,
    dewPointF: dewPointF as Fahrenheit,
    enthalpyBtuPerLb: btuPerLb(psychrometrics.GetMoistAirEnthalpy(dryBulbF, humidityRatio)),
    specificVolumeFt3PerLb: ft3PerLb(psychrometrics.GetMoistAirVolume(dryBulbF, humidityRatio, pressurePsia)),
  };
}

/**
 * Pressure of water vapour over liquid water or, below 32.018 °F, ice.
 *
 * @param tempF - Temperature, °F. −148 to 392.
 * @returns Saturation pressure, psia.
 * @throws {@link OutOfRangeError} outside that range.
 * @see ASHRAE Handbook, Fundamentals 2017, ch. 1 eq. 5 and 6, table 3 (published).
 */
export function waterSaturationPressurePsia(tempF: number): Psia {
  return psychrometrics.GetSatVapPres(saturationTemp(tempF)) as Psia;
}

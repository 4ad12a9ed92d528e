import { type Cfm, cfm, type Quantity, quantity, requireRange } from "../units";

/** 60 min/h · 0.075 lb/ft³ · 0.24 Btu/(lb·°F) = 1.08 Btu/h per cfm and °F: standard air. */
const SENSIBLE_FACTOR = 60 * 0.075 * 0.24;
/** Btu/h per kW. */
const BTUH_PER_KILOWATT = 3_412;
const BTUH_PER_TON = 12_000;

export type CfmPerTon = Quantity<"cfm/ton">;
const cfmPerTonQuantity = quantity("airflow per ton", "cfm/ton", 0, 100_000);

/** Electric heat by its power, or by volts and amps (resistance heat, so power factor 1). */
export type ElectricHeat = { readonly kilowatts: number } | { readonly volts: number; readonly amps: number };

/**
 * Airflow from the temperature rise across electric heat.
 *
 * @param input.heat - Power of the heaters alone, 0.5 to 100 kW, or 100 to 600 V and 1 to 400 A.
 * @param input.temperatureRiseF - Supply minus return air, °F, out of sight of the elements. 3 to 100.
 * @param input.densityRatio - Site air density over standard air. 0.5 to 1.1.
 * @returns Airflow, cfm at site density. The blower's own heat is left out: add its kW when it is known.
 * @throws {@link OutOfRangeError} outside those ranges.
 * @see Heat balance on standard air (physics): kW · 3,412 / (1.08 · ΔT · density ratio).
 */
export function temperatureRiseAirflowCfm(input: {
  readonly heat: ElectricHeat;
  readonly temperatureRiseF: number;
  readonly densityRatio: number;
}): Cfm {
  requireRange("temperature rise", input.temperatureRiseF, "°F", 3, 100);
  requireRange("air density ratio", input.densityRatio, "", 0.5, 1.1);
  const heatBtuh = heatKilowatts(input.heat) * BTUH_PER_KILOWATT;
  return cfm(heatBtuh / (SENSIBLE_FACTOR * input.temperatureRiseF * input.densityRatio));
}

/**
 * Airflow per ton of the capacity the equipment is set to give, not of its nameplate.
 *
 * @param airflowCfm - Airflow, cfm. 0 to 20,000.
 * @param capacityAsSetBtuh - Total cooling capacity at the setting, Btu/h. 1,000 to 1,000,000.
 * @returns cfm per 12,000 Btu/h.
 * @throws {@link OutOfRangeError} outside those ranges.
 * @see Definition: 1 ton of refrigeration = 12,000 Btu/h (published).
 */
export function cfmPerTon(airflowCfm: number, capacityAsSetBtuh: number): CfmPerTon {
  requireRange("airflow", airflowCfm, "cfm", 0, 20_000);
  requireRange("capacity as set", capacityAsSetBtuh, "Btu/h", 1_000, 1_000_000);
  return cfmPerTonQuantity((airflowCfm * BTUH_PER_TON) / capacityAsSetBtuh);
}

function heatKilowatts(heat: ElectricHeat): number {
  if ("kilowatts" in heat) return requireRange("heater power", heat.kilowatts, "kW", 0.5, 100);
  requireRange("heater voltage", heat.volts, "V", 100, 600);
  requireRange("heater current", heat.amps, "A", 1, 400);
  return (heat.volts * heat.amps) / 1_000;
}

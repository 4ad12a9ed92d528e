import { ImpossibleStateError } from "../errors";
import { leakageFlowCfm, type ShelterClass, type Storeys } from "../load";
import { requireRange } from "../units";
import type { Tilt } from "../weather";

/** A window, or a roof's share of the sun that reaches the rooms. */
export type SunAperture = Tilt & {
  readonly name: string;
  /** 0 to 20,000 ft². */
  readonly areaFt2: number;
  /** Share of the light that becomes heat inside, 0 to 1. */
  readonly transmittance: number;
};

/** A house: air with light furnishings, one heavy mass, water in the air and in a buffer. */
export type HouseModel = {
  /** 1,000 to 1,000,000 ft³. */
  readonly volumeFt3: number;
  /** Enclosure without air exchange, 0 to 20,000 Btu/(h·°F). */
  readonly conductanceBtuhPerF: number;
  /** Air and light furnishings, 100 to 1,000,000 Btu/°F. */
  readonly airCapacitanceBtuPerF: number;
  /** Heavy mass, 100 to 10,000,000 Btu/°F. */
  readonly massCapacitanceBtuPerF: number;
  /** Between air and mass, 0 to 100,000 Btu/(h·°F). */
  readonly massCouplingBtuhPerF: number;
  readonly apertures: readonly SunAperture[];
  /** Share of sun and of inside gains that goes into the mass first, 0 to 1. */
  readonly radiantShare: number;
  /** 0 to 5,000 in² at 4 Pa. */
  readonly leakageAreaIn2: number;
  readonly storeys: Storeys;
  readonly shelterClass: ShelterClass;
  /** People and appliances, 24 numbers from the hour after midnight, 0 to 100,000 Btu/h. */
  readonly gainsBtuhByHour: readonly number[];
  /** Water given off inside, 24 numbers, 0 to 50 lb/h. */
  readonly moistureLbPerHByHour: readonly number[];
  /** Water held by air and furnishings over that in the air alone, 1 to 100. */
  readonly moistureCapacitanceMultiple: number;
  /** Hours in which furnishings follow the air, 0.1 to 100. */
  readonly moistureExchangeH: number;
};

/** Outdoor air by a fan, counted balanced. */
export type VentilationModel =
  | { readonly kind: "none" }
  | { readonly kind: "continuous"; readonly airflowCfm: number }
  /** From one hour of the day to another, 0 to 24. */
  | {
      readonly kind: "timed";
      readonly airflowCfm: number;
      readonly fromHour: number;
      readonly toHour: number;
    }
  /** Stands still while the outdoor dew point is above the limit. */
  | { readonly kind: "on need"; readonly airflowCfm: number; readonly pauseAboveDewPointF: number };

/**
 * Refuses a house the year cannot be run for.
 *
 * @param house - Ranges at {@link HouseModel}.
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} naming the field.
 */
export function requireHouse(house: HouseModel): void {
  requireRange("volumeFt3", house.volumeFt3, "ft³", 1_000, 1e6);
  requireRange("conductanceBtuhPerF", house.conductanceBtuhPerF, "Btu/(h·°F)", 0, 20_000);
  requireRange("airCapacitanceBtuPerF", house.airCapacitanceBtuPerF, "Btu/°F", 100, 1e6);
  requireRange("massCapacitanceBtuPerF", house.massCapacitanceBtuPerF, "Btu/°F", 100, 1e7);
  requireRange("massCouplingBtuhPerF", house.massCouplingBtuhPerF, "Btu/(h·°F)", 0, 1e5);
  requireRange("leakageAreaIn2", house.leakageAreaIn2, "in²", 0, 5_000);
  requireRange("radiantShare", house.radiantShare, "ratio", 0, 1);
  requireRange("moistureCapacitanceMultiple", house.moistureCapacitanceMultiple, "ratio", 1, 100);
  requireRange("moistureExchangeH", house.moistureExchangeH, "h", 0.1, 100);
  for (const one of house.apertures) {
    requireRange("apertures.areaFt2", one.areaFt2, "ft²", 0, 20_000);
    requireRange("apertures.transmittance", one.transmittance, "ratio", 0, 1);
  }
  requireHours("gainsBtuhByHour", house.gainsBtuhByHour, "Btu/h", 1e5);
  requireHours("moistureLbPerHByHour", house.moistureLbPerHByHour, "lb/h", 50);
}

/**
 * Refuses a ventilation no fan gives.
 *
 * @param ventilation - `airflowCfm` 0 to 2,000 cfm; hours 0 to 24; dew point 0 to 90 °F.
 * @throws {@link OutOfRangeError} naming the field.
 */
export function requireVentilation(ventilation: VentilationModel): void {
  if (ventilation.kind === "none") return;
  requireRange("ventilation.airflowCfm", ventilation.airflowCfm, "cfm", 0, 2_000);
  if (ventilation.kind === "timed") {
    requireRange("ventilation.fromHour", ventilation.fromHour, "h", 0, 24);
    requireRange("ventilation.toHour", ventilation.toHour, "h", 0, 24);
  }
  if (ventilation.kind === "on need") {
    requireRange("ventilation.pauseAboveDewPointF", ventilation.pauseAboveDewPointF, "°F", 0, 90);
  }
}

/**
 * Leakage as the loop reads it: with outdoor air `√(stack · |Δt| + wind · U²)`, cfm.
 *
 * @param house - Its leakage area, in², storeys and shelter class.
 * @returns cfm² for each °F, and for each mph².
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} as `leakageFlowCfm`.
 * @see `leakageFlowCfm`, asked at 1 °F and at 1 mph (recalled).
 */
export function leakageSquares(house: Pick<HouseModel, "leakageAreaIn2" | "storeys" | "shelterClass">): {
  readonly stackCfm2PerF: number;
  readonly windCfm2PerMph2: number;
} {
  const { leakageAreaIn2, storeys, shelterClass } = house;
  const perIn2 = { leakageAreaIn2: 1, storeys, shelterClass };
  const stack = leakageAreaIn2 * leakageFlowCfm({ ...perIn2, temperatureDifferenceF: 1, windMph: 0 });
  const wind = leakageAreaIn2 * leakageFlowCfm({ ...perIn2, temperatureDifferenceF: 0, windMph: 1 });
  return { stackCfm2PerF: stack * stack, windCfm2PerMph2: wind * wind };
}

function requireHours(name: string, values: readonly number[], unit: string, max: number): void {
  if (values.length !== 24) {
    throw new ImpossibleStateError(`${name} needs 24 numbers, one an hour; ${values.length} are given.`, [
      name,
    ]);
  }
  for (const [hour, value] of values.entries()) requireRange(`${name}[${hour}]`, value, unit, 0, max);
}

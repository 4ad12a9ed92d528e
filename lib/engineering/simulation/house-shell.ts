import { QUICK_SENSIBLE_FACTOR, SEA_LEVEL_PRESSURE_PSIA } from "../air";
import { ImpossibleStateError } from "../errors";
import { leakageAreaIn2, leakageFlowCfm, type ShelterClass, type Storeys } from "../load";
import { LB_PER_PINT, PUBLISHED_SOURCES } from "../moisture";
import { requireRange } from "../units";
import { type AssumptionName, type HouseAssumption, houseAssumptions } from "./house-assumptions";

/** What the load summary gives. */
export type LoadForHouse = {
  /** 1,000 to 500,000 Btu/h. */
  readonly heatingBtuh: number;
  /** 1,000 to 500,000 Btu/h. */
  readonly sensibleCoolingBtuh: number;
  readonly indoorHeatingDbF: number;
  readonly outdoorHeatingDbF: number;
  readonly indoorCoolingDbF: number;
  readonly outdoorCoolingDbF: number;
  /** 200 to 20,000 ft². */
  readonly floorAreaFt2: number;
  /** 0 to 30. */
  readonly bedrooms: number;
  /** 0 to 50,000 cfm at 50 Pa; `null` when nobody measured or said. */
  readonly leakageCfm50: number | null;
  /** False when the leakage was assumed; left out: measured. */
  readonly leakageMeasured?: boolean;
  /** People living there, 0 to 30; left out or `null`: bedrooms + 1. */
  readonly occupants?: number | null;
  /** Water of cooking, bathing, washing and damp ground, 0 to 300 pint/day; left out or `null`: assumed. */
  readonly householdPintsPerDay?: number | null;
  /** 0 to 2,000 cfm. */
  readonly ventilationCfm: number;
  readonly storeys: Storeys;
  readonly shelterClass: ShelterClass;
};

/** Neighbours in most directions. Common practice, no source. */
export const SUBURBAN_SHELTER: ShelterClass = 4;

/**
 * Storeys of a house from its height.
 *
 * @param houseHeightFt - Floor to highest ceiling, ft, 6 to 60.
 * @returns Up to 12 ft one storey, up to 21 ft two, above three.
 * @throws {@link OutOfRangeError} outside that range.
 * @see Heights of storeys: common practice, no source.
 */
export function storeysOf(houseHeightFt: number): Storeys {
  const height = requireRange("houseHeightFt", houseHeightFt, "ft", 6, 60);
  return height <= 12 ? 1 : height <= 21 ? 2 : 3;
}

/** What a load summary says about a house before anything is said about its windows. */
export type HouseShell = {
  readonly assumptions: readonly HouseAssumption[];
  readonly assumed: (name: AssumptionName) => number;
  readonly areaFt2: number;
  readonly volumeFt3: number;
  readonly leakageAreaIn2: number;
  /** Enclosure without air exchange, Btu/(h·°F). */
  readonly conductanceBtuhPerF: number;
  /** Heat that leakage at the design wind and ventilation carry for each °F, in the air of the place, Btu/(h·°F). */
  readonly outdoorAirBtuhPerF: (temperatureDifferenceF: number) => number;
  /** The same air, cfm. */
  readonly outdoorAirCfm: (temperatureDifferenceF: number) => number;
  /** People and appliances, Btu/h. */
  readonly gainsBtuh: number;
  /** Water given off inside, lb/h. */
  readonly waterLbPerH: number;
};

/**
 * The house behind a load summary but for its windows: conductance is what of the heating load outdoor air leaves over.
 *
 * @param load - Ranges at {@link LoadForHouse}; design temperatures −60 to 130 °F, heating's at least 5 °F apart.
 * @param changed - Assumptions put otherwise, by name, in their unit; 0 or more.
 * @param pressurePsia - Of the place, psia, 6 to 17: thin air carries less heat.
 * @returns The shell; Btu/h, cfm, lb/h as its fields say.
 * @throws {@link OutOfRangeError} outside those ranges.
 * @throws {@link ImpossibleStateError} when outdoor air alone exceeds the heating load.
 * @see Balance at the heating design condition (physics); assumptions: common practice, no source, where not said otherwise.
 */
export function houseShell(
  load: LoadForHouse,
  changed: Partial<Readonly<Record<AssumptionName, number>>>,
  pressurePsia: number,
): HouseShell {
  const densityRatio = requireRange("pressurePsia", pressurePsia, "psia", 6, 17) / SEA_LEVEL_PRESSURE_PSIA;
  const heating = requireRange("heatingBtuh", load.heatingBtuh, "Btu/h", 1_000, 500_000);
  const area = requireRange("floorAreaFt2", load.floorAreaFt2, "ft²", 200, 20_000);
  const bedrooms = requireRange("bedrooms", load.bedrooms, "bedrooms", 0, 30);
  const ventilation = requireRange("ventilationCfm", load.ventilationCfm, "cfm", 0, 2_000);
  const colder = difference(
    load.indoorHeatingDbF,
    load.outdoorHeatingDbF,
    "indoorHeatingDbF",
    "outdoorHeatingDbF",
  );
  const height = requireRange("ceilingHeightFt", changed.ceilingHeightFt ?? 8.5, "ft", 6, 20);
  const volumeFt3 = area * height;
  const optional = (name: "occupants" | "householdPintsPerDay", unit: string, most: number) => {
    const value = load[name] ?? null;
    return value === null ? null : requireRange(name, value, unit, 0, most);
  };
  const airChangesAt50Pa =
    load.leakageCfm50 === null
      ? null
      : (requireRange("leakageCfm50", load.leakageCfm50, "cfm", 0, 50_000) * 60) / volumeFt3;
  const assumptions = houseAssumptions({
    bedrooms,
    airChangesAt50Pa,
    leakageMeasured: load.leakageMeasured ?? true,
    occupants: optional("occupants", "people", 30),
    householdPintsPerDay: optional("householdPintsPerDay", "pint/day", 300),
  }).map((one) => ({
    ...one,
    value: requireRange(one.name, changed[one.name] ?? one.value, one.unit, 0, 1e5),
  }));
  const assumed = (name: AssumptionName): number =>
    assumptions.find((one) => one.name === name)?.value ?? Number.NaN;

  const areaIn2 = leakageAreaIn2({ leakageCfm50: (assumed("airChangesAt50Pa") * volumeFt3) / 60 });
  const outdoorAirCfm = (temperatureDifferenceF: number): number =>
    ventilation +
    leakageFlowCfm({
      leakageAreaIn2: areaIn2,
      storeys: load.storeys,
      shelterClass: load.shelterClass,
      temperatureDifferenceF,
      windMph: assumed("designWindMph"),
    });
  const outdoorAirBtuhPerF = (temperatureDifferenceF: number): number =>
    QUICK_SENSIBLE_FACTOR * densityRatio * outdoorAirCfm(temperatureDifferenceF);
  const air = outdoorAirBtuhPerF(colder);
  const conductance = heating / colder - air;
  if (conductance <= 0) {
    throw new ImpossibleStateError(
      `Outdoor air alone takes ${Math.round(air * colder)} Btu/h, all of the heating load of ${heating} Btu/h; check heatingBtuh, leakageCfm50 and ventilationCfm.`,
      ["heatingBtuh", "leakageCfm50", "ventilationCfm"],
    );
  }
  const water =
    assumed("occupants") * PUBLISHED_SOURCES.personPintsPerHour + assumed("householdPintsPerDay") / 24;
  return {
    assumptions,
    assumed,
    areaFt2: area,
    volumeFt3,
    leakageAreaIn2: areaIn2,
    conductanceBtuhPerF: conductance,
    outdoorAirBtuhPerF,
    outdoorAirCfm,
    gainsBtuh: assumed("occupants") * assumed("personSensibleBtuh") + assumed("applianceBtuh"),
    waterLbPerH: water * LB_PER_PINT,
  };
}

/**
 * Difference of two design temperatures.
 *
 * @param warm - −60 to 130 °F.
 * @param cold - −60 to 130 °F, at least 5 °F below.
 * @param warmName - The field, for the message.
 * @param coldName - The field, for the message.
 * @returns Δ°F, 5 to 150.
 * @throws {@link OutOfRangeError} outside those ranges.
 * @see Definition (computed).
 */
export function difference(warm: number, cold: number, warmName: string, coldName: string): number {
  requireRange(warmName, warm, "°F", -60, 130);
  requireRange(coldName, cold, "°F", -60, 130);
  return requireRange(`${warmName} less ${coldName}`, warm - cold, "Δ°F", 5, 150);
}

import { QUICK_SENSIBLE_FACTOR } from "../air";
import { ImpossibleStateError } from "../errors";
import { leakageAreaIn2, leakageFlowCfm, type ShelterClass, type Storeys } from "../load";
import { LB_PER_PINT, PUBLISHED_SOURCES } from "../moisture";
import { requireRange } from "../units";
import type { Weather } from "../weather";
import type { HouseModel } from "./house";
import { type AssumptionName, type HouseAssumption, houseAssumptions } from "./house-assumptions";
import { requireWeather, sunHeatByHour } from "./weather-drive";

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
  /** 0 to 50,000 cfm at 50 Pa; `null` when not measured. */
  readonly leakageCfm50: number | null;
  /** 0 to 2,000 cfm. */
  readonly ventilationCfm: number;
  readonly storeys: Storeys;
  readonly shelterClass: ShelterClass;
};

export type DerivedHouse = { readonly house: HouseModel; readonly assumptions: readonly HouseAssumption[] };

const WALLS_DEG = [0, 90, 180, 270];
/** Hours this close to the design temperature or hotter count as design hours, °F. */
const DESIGN_WITHIN_F = 2;

/**
 * A house that has this load summary: conductance from the heating load, sun from what the cooling load leaves over after conduction,
 * outdoor air and inside gains, spread evenly over four walls and measured in the weather's own light at its design hours.
 *
 * @param load - Ranges at {@link LoadForHouse}; design temperatures −60 to 130 °F, at least 5 °F apart.
 * @param weather - The job's, without gaps.
 * @param changed - Assumptions put otherwise, by name, in their unit; 0 or more.
 * @returns The house, and every assumption it rests on.
 * @throws {@link OutOfRangeError} outside those ranges.
 * @throws {@link ImpossibleStateError} when outdoor air alone exceeds the heating load, or nothing of the cooling load is left for the sun.
 * @see Balances at the two design conditions (physics); assumptions: common practice, no source, where not said otherwise.
 */
export function houseFromLoadSummary(
  load: LoadForHouse,
  weather: Weather,
  changed: Partial<Record<AssumptionName, number>> = {},
): DerivedHouse {
  requireWeather(weather);
  const heating = requireRange("heatingBtuh", load.heatingBtuh, "Btu/h", 1_000, 500_000);
  const cooling = requireRange("sensibleCoolingBtuh", load.sensibleCoolingBtuh, "Btu/h", 1_000, 500_000);
  const area = requireRange("floorAreaFt2", load.floorAreaFt2, "ft²", 200, 20_000);
  const bedrooms = requireRange("bedrooms", load.bedrooms, "bedrooms", 0, 30);
  const ventilation = requireRange("ventilationCfm", load.ventilationCfm, "cfm", 0, 2_000);
  const colder = difference(
    load.indoorHeatingDbF,
    load.outdoorHeatingDbF,
    "indoorHeatingDbF",
    "outdoorHeatingDbF",
  );
  const hotter = difference(
    load.outdoorCoolingDbF,
    load.indoorCoolingDbF,
    "outdoorCoolingDbF",
    "indoorCoolingDbF",
  );
  const height = requireRange("ceilingHeightFt", changed.ceilingHeightFt ?? 8.5, "ft", 6, 20);
  const volumeFt3 = area * height;
  const measured =
    load.leakageCfm50 === null
      ? null
      : (requireRange("leakageCfm50", load.leakageCfm50, "cfm", 0, 50_000) * 60) / volumeFt3;
  const assumptions = houseAssumptions(bedrooms, measured).map((one) => ({
    ...one,
    value: requireRange(one.name, changed[one.name] ?? one.value, one.unit, 0, 1e5),
  }));
  const assumed = (name: AssumptionName): number =>
    assumptions.find((one) => one.name === name)?.value ?? Number.NaN;

  const areaIn2 = leakageAreaIn2({ leakageCfm50: (assumed("airChangesAt50Pa") * volumeFt3) / 60 });
  const outdoorAirBtuhPerF = (temperatureDifferenceF: number): number =>
    QUICK_SENSIBLE_FACTOR *
    (ventilation +
      leakageFlowCfm({
        leakageAreaIn2: areaIn2,
        storeys: load.storeys,
        shelterClass: load.shelterClass,
        temperatureDifferenceF,
        windMph: assumed("designWindMph"),
      }));
  const conductance = heating / colder - outdoorAirBtuhPerF(colder);
  if (conductance <= 0) {
    throw new ImpossibleStateError(
      `Outdoor air alone takes ${Math.round(outdoorAirBtuhPerF(colder) * colder)} Btu/h, all of the heating load of ${heating} Btu/h; check heatingBtuh, leakageCfm50 and ventilationCfm.`,
      ["heatingBtuh", "leakageCfm50", "ventilationCfm"],
    );
  }
  const gains = assumed("occupants") * assumed("personSensibleBtuh") + assumed("applianceBtuh");
  const sun = cooling - (conductance + outdoorAirBtuhPerF(hotter)) * hotter - gains;
  if (sun <= 0) {
    throw new ImpossibleStateError(
      `Conduction, outdoor air and inside gains exceed the sensible cooling load of ${cooling} Btu/h by ${Math.round(-sun)} Btu/h; the heating load may hold a safety factor, or the cooling load is too small.`,
      ["heatingBtuh", "sensibleCoolingBtuh"],
    );
  }
  const wallFt2 = sun / designLight(weather, load.outdoorCoolingDbF);
  const water =
    assumed("occupants") * PUBLISHED_SOURCES.personPintsPerHour + assumed("householdPintsPerDay") / 24;
  return {
    house: {
      volumeFt3,
      conductanceBtuhPerF: conductance,
      airCapacitanceBtuPerF: assumed("airCapacitanceBtuPerFFt2") * area,
      massCapacitanceBtuPerF: assumed("massCapacitanceBtuPerFFt2") * area,
      massCouplingBtuhPerF: assumed("massCouplingBtuhPerFFt2") * area,
      apertures: WALLS_DEG.map((azimuthDeg) => wall(azimuthDeg, wallFt2)),
      radiantShare: 0.5,
      leakageAreaIn2: areaIn2,
      storeys: load.storeys,
      shelterClass: load.shelterClass,
      gainsBtuhByHour: Array.from({ length: 24 }, () => gains),
      moistureLbPerHByHour: Array.from({ length: 24 }, () => water * LB_PER_PINT),
      moistureCapacitanceMultiple: assumed("moistureCapacitanceMultiple"),
      moistureExchangeH: assumed("moistureExchangeH"),
    },
    assumptions,
  };
}

function wall(azimuthDeg: number, areaFt2: number) {
  return { name: `wall ${azimuthDeg}°`, tiltDeg: 90, azimuthDeg, areaFt2, transmittance: 1 };
}

/** Mean light on 1 ft² of each wall together in the sunlit hours as hot as the design, Btu/h. */
function designLight(weather: Weather, designF: number): number {
  const light = sunHeatByHour(
    weather,
    WALLS_DEG.map((azimuthDeg) => wall(azimuthDeg, 1)),
  );
  const hot = Array.from(light).filter(
    (one, hour) => one > 0 && (weather.dryBulbF[hour] ?? 0) >= designF - DESIGN_WITHIN_F,
  );
  if (hot.length === 0) {
    throw new ImpossibleStateError(
      `The weather never reaches outdoorCoolingDbF ${designF} °F in daylight; choose the job's own weather file.`,
      ["outdoorCoolingDbF", "weather"],
    );
  }
  return hot.reduce((sum, one) => sum + one, 0) / hot.length;
}

function difference(warm: number, cold: number, warmName: string, coldName: string): number {
  requireRange(warmName, warm, "°F", -60, 130);
  requireRange(coldName, cold, "°F", -60, 130);
  return requireRange(`${warmName} less ${coldName}`, warm - cold, "Δ°F", 5, 150);
}

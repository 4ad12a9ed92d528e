import { ImpossibleStateError } from "../errors";
import { requireRange } from "../units";
import type { Weather } from "../weather";
import type { HouseModel } from "./house";
import type { AssumptionName, HouseAssumption } from "./house-assumptions";
import { difference, houseShell, type LoadForHouse } from "./house-shell";
import { requireWeather, sunHeatByHour } from "./weather-drive";

export type { LoadForHouse } from "./house-shell";

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
  const pressurePsia = requireWeather(weather);
  const cooling = requireRange("sensibleCoolingBtuh", load.sensibleCoolingBtuh, "Btu/h", 1_000, 500_000);
  const hotter = difference(
    load.outdoorCoolingDbF,
    load.indoorCoolingDbF,
    "outdoorCoolingDbF",
    "indoorCoolingDbF",
  );
  const shell = houseShell(load, changed, pressurePsia);
  const { assumed } = shell;
  const air = shell.outdoorAirBtuhPerF(hotter);
  const sun = cooling - (shell.conductanceBtuhPerF + air) * hotter - shell.gainsBtuh;
  if (sun <= 0) {
    throw new ImpossibleStateError(
      `Conduction, outdoor air and inside gains exceed the sensible cooling load of ${cooling} Btu/h by ${Math.round(-sun)} Btu/h; the heating load may hold a safety factor, or the cooling load is too small.`,
      ["heatingBtuh", "sensibleCoolingBtuh"],
    );
  }
  const wallFt2 = sun / designLight(weather, load.outdoorCoolingDbF);
  return {
    house: {
      volumeFt3: shell.volumeFt3,
      conductanceBtuhPerF: shell.conductanceBtuhPerF,
      airCapacitanceBtuPerF: assumed("airCapacitanceBtuPerFFt2") * shell.areaFt2,
      massCapacitanceBtuPerF: assumed("massCapacitanceBtuPerFFt2") * shell.areaFt2,
      massCouplingBtuhPerF: assumed("massCouplingBtuhPerFFt2") * shell.areaFt2,
      apertures: WALLS_DEG.map((azimuthDeg) => wall(azimuthDeg, wallFt2)),
      radiantShare: 0.5,
      leakageAreaIn2: shell.leakageAreaIn2,
      storeys: load.storeys,
      shelterClass: load.shelterClass,
      gainsBtuhByHour: Array.from({ length: 24 }, () => shell.gainsBtuh),
      moistureLbPerHByHour: Array.from({ length: 24 }, () => shell.waterLbPerH),
      moistureCapacitanceMultiple: assumed("moistureCapacitanceMultiple"),
      moistureExchangeH: assumed("moistureExchangeH"),
    },
    assumptions: shell.assumptions,
  };
}

function wall(azimuthDeg: number, areaFt2: number) {
  return { name: `wall ${azimuthDeg}°`, tiltDeg: 90, azimuthDeg, areaFt2, transmittance: 1 };
}

/** Every member of an ensemble asks for the same light; the last answer of a year is kept. */
const kept = new WeakMap<Weather, { readonly designF: number; readonly light: number }>();

function designLight(weather: Weather, designF: number): number {
  const last = kept.get(weather);
  if (last?.designF === designF) return last.light;
  const light = meanDesignLight(weather, designF);
  kept.set(weather, { designF, light });
  return light;
}

/** Mean light on 1 ft² of each wall together in the sunlit hours as hot as the design, Btu/h. */
function meanDesignLight(weather: Weather, designF: number): number {
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

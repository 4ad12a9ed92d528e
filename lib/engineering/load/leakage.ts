import { ImpossibleStateError } from "../errors";
import { power } from "../exact-functions";
import { type Cfm, cfm, quantity, type SquareInches, squareInches } from "../units";

/** in. w.c.: the 4 Pa at which leakage area is defined. */
const REFERENCE_PRESSURE_IN_WC = 0.016;
/** Flow exponent of the average house. */
const FLOW_EXPONENT = 0.65;
/** lb/ft³ */
const STANDARD_DENSITY = 0.075;

/** Stack coefficient by number of storeys, cfm²/(in⁴·°F). */
const STACK = { 1: 0.015, 2: 0.0299, 3: 0.0449 } as const;
/** Wind coefficient by shelter class, from open country (1) to closely built (5), and storeys, cfm²/(in⁴·mph²). */
const WIND = {
  1: { 1: 0.0119, 2: 0.0157, 3: 0.0184 },
  2: { 1: 0.0092, 2: 0.0121, 3: 0.0143 },
  3: { 1: 0.0065, 2: 0.0086, 3: 0.0101 },
  4: { 1: 0.0039, 2: 0.0051, 3: 0.006 },
  5: { 1: 0.0012, 2: 0.0016, 3: 0.0018 },
} as const;

export type Storeys = keyof typeof STACK;
/** 1 open country without shelter … 5 close shelter on all sides. */
export type ShelterClass = keyof typeof WIND;

const leakageAt50 = quantity("leakageCfm50", "cfm at 50 Pa", 0, 50_000);
const leakageArea = quantity("leakageAreaIn2", "in²", 0, 5_000);
const temperatureDifference = quantity("temperatureDifferenceF", "Δ°F", -150, 150);
const windSpeed = quantity("windMph", "mph", 0, 100);

/**
 * Effective leakage area at 4 Pa from a blower-door result, `0.186·Q4·√(ρ/2Δp)` with `Q4 = Q50·0.08^0.65`: about 0.0552·Q50.
 *
 * @param house - `leakageCfm50` 0 to 50,000 cfm at 50 Pa.
 * @returns Area, in².
 * @throws {@link OutOfRangeError} outside that range.
 * @see ASHRAE Handbook, Fundamentals, ch. 16 (computed).
 */
export function leakageAreaIn2(house: { readonly leakageCfm50: number }): SquareInches {
  const flowAtReference = leakageAt50(house.leakageCfm50) * power(4 / 50, FLOW_EXPONENT);
  return squareInches(0.186 * flowAtReference * Math.sqrt(STANDARD_DENSITY / (2 * REFERENCE_PRESSURE_IN_WC)));
}

/**
 * Outdoor air through the leaks at given weather, `A_L·√(Cs·|Δt| + Cw·U²)`.
 *
 * @param input - `leakageAreaIn2` 0 to 5,000 in²; `storeys` 1 to 3; `shelterClass` 1 to 5; `temperatureDifferenceF`
 * indoors to outdoors ±150 °F; `windMph` 0 to 100 mph.
 * @returns Outdoor air, cfm.
 * @throws {@link OutOfRangeError} outside those ranges; {@link ImpossibleStateError} for other storeys or classes.
 * @see ASHRAE Handbook, Fundamentals, ch. 16, basic model (recalled).
 */
export function leakageFlowCfm(input: {
  readonly leakageAreaIn2: number;
  readonly storeys: Storeys;
  readonly shelterClass: ShelterClass;
  readonly temperatureDifferenceF: number;
  readonly windMph: number;
}): Cfm {
  const stack: number | undefined = STACK[input.storeys];
  const wind: number | undefined = WIND[input.shelterClass]?.[input.storeys];
  if (stack === undefined || wind === undefined) {
    throw new ImpossibleStateError("give 1, 2 or 3 storeys and a shelter class from 1 to 5", [
      "storeys",
      "shelterClass",
    ]);
  }
  const difference = Math.abs(temperatureDifference(input.temperatureDifferenceF));
  const windMph = windSpeed(input.windMph);
  return cfm(leakageArea(input.leakageAreaIn2) * Math.sqrt(stack * difference + wind * windMph * windMph));
}

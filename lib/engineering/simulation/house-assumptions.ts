import { PUBLISHED_SOURCES } from "../moisture";

/** One number the load summary does not give. It is shown and may be changed. */
export type HouseAssumption = {
  readonly name: AssumptionName;
  readonly value: number;
  readonly unit: string;
  readonly why: string;
  /** Where an honest person might also put it. Equal to `value` where the answer hardly depends on it. */
  readonly low: number;
  readonly high: number;
};

export const ASSUMPTION_NAMES = [
  "ceilingHeightFt",
  "airChangesAt50Pa",
  "designWindMph",
  "occupants",
  "personSensibleBtuh",
  "applianceBtuh",
  "householdPintsPerDay",
  "airCapacitanceBtuPerFFt2",
  "massCapacitanceBtuPerFFt2",
  "massCouplingBtuhPerFFt2",
  "moistureCapacitanceMultiple",
  "moistureExchangeH",
] as const;
export type AssumptionName = (typeof ASSUMPTION_NAMES)[number];

const PRACTICE = "common practice, no source";

/**
 * What is assumed about a house beyond its load summary.
 *
 * @param bedrooms - 0 to 30.
 * @param measuredAirChangesAt50Pa - From the blower door, 1/h, 0 to 60; `null` when nobody measured.
 * @returns The assumptions, in the order of {@link ASSUMPTION_NAMES}; values in their `unit`.
 * @see Sources in `why`; most are common practice, no source.
 */
export function houseAssumptions(
  bedrooms: number,
  measuredAirChangesAt50Pa: number | null,
): readonly HouseAssumption[] {
  const people = bedrooms + 1;
  const pints =
    people * PUBLISHED_SOURCES.showerPints +
    (people * PUBLISHED_SOURCES.dinnerForFourPints) / 4 +
    PUBLISHED_SOURCES.dishesByHandPints;
  const leak = measuredAirChangesAt50Pa ?? 7;
  return [
    fixed("ceilingHeightFt", 8.5, "ft", PRACTICE),
    measuredAirChangesAt50Pa === null
      ? {
          name: "airChangesAt50Pa",
          value: leak,
          unit: "1/h",
          why: `not measured; ${PRACTICE}`,
          low: 3,
          high: 12,
        }
      : {
          name: "airChangesAt50Pa",
          value: leak,
          unit: "1/h",
          why: "measured; a tenth either way for the instrument and the weather",
          low: leak * 0.9,
          high: leak * 1.1,
        },
    fixed("designWindMph", 7.5, "mph", PRACTICE),
    fixed("occupants", people, "people", "bedrooms + 1, as in ASHRAE 62.2 (published)"),
    fixed("personSensibleBtuh", 230, "Btu/h", "person at rest (from memory)"),
    fixed("applianceBtuh", 2_400, "Btu/h", PRACTICE),
    {
      name: "householdPintsPerDay",
      value: pints,
      unit: "pint/day",
      why: "a shower each, dinner and dishes by hand (published amounts); breath is counted apart",
      low: pints * 0.5,
      high: pints * 2.5,
    },
    fixed("airCapacitanceBtuPerFFt2", 1.2, "Btu/(°F·ft²)", `air and light furnishings; ${PRACTICE}`),
    fixed("massCapacitanceBtuPerFFt2", 4, "Btu/(°F·ft²)", `frame house; ${PRACTICE}`),
    fixed("massCouplingBtuhPerFFt2", 1.5, "Btu/(h·°F·ft²)", `all inside surfaces; ${PRACTICE}`),
    {
      name: "moistureCapacitanceMultiple",
      value: 15,
      unit: "ratio",
      why: "furnished houses, 10 to 25 (from memory, unverified)",
      low: 10,
      high: 25,
    },
    fixed("moistureExchangeH", 8, "h", PRACTICE),
  ];
}

function fixed(name: AssumptionName, value: number, unit: string, why: string): HouseAssumption {
  return { name, value, unit, why, low: value, high: value };
}

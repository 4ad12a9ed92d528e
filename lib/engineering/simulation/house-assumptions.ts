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
const LOAD_SUMMARY = "from the load summary";

/** What the load summary says of them, where it does. */
export type SaidOfHouse = {
  /** 0 to 30. */
  readonly bedrooms: number;
  /** 1/h, 0 to 60; `null` when nobody said. */
  readonly airChangesAt50Pa: number | null;
  /** True when a blower door said so. */
  readonly leakageMeasured: boolean;
  /** 0 to 30; `null` when nobody said. */
  readonly occupants: number | null;
  /** 0 to 300; `null` when nobody said. */
  readonly householdPintsPerDay: number | null;
};

/**
 * What is assumed about a house beyond its load summary.
 *
 * @param said - Ranges at {@link SaidOfHouse}.
 * @returns The assumptions, in the order of {@link ASSUMPTION_NAMES}; values in their `unit`.
 * @see Sources in `why`; most are common practice, no source.
 */
export function houseAssumptions(said: SaidOfHouse): readonly HouseAssumption[] {
  const people = said.occupants ?? said.bedrooms + 1;
  return [
    fixed("ceilingHeightFt", 8.5, "ft", PRACTICE),
    leakage(said),
    fixed("designWindMph", 7.5, "mph", PRACTICE),
    fixed(
      "occupants",
      people,
      "people",
      said.occupants === null ? "bedrooms + 1, as in ASHRAE 62.2 (published)" : LOAD_SUMMARY,
    ),
    fixed("personSensibleBtuh", 230, "Btu/h", "person at rest (from memory)"),
    fixed("applianceBtuh", 2_400, "Btu/h", PRACTICE),
    household(said, people),
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

function leakage({ airChangesAt50Pa, leakageMeasured }: SaidOfHouse): HouseAssumption {
  const of = { name: "airChangesAt50Pa", unit: "1/h" } as const;
  if (airChangesAt50Pa === null)
    return { ...of, value: 7, why: `not measured; ${PRACTICE}`, low: 3, high: 12 };
  const [low, high, why] = leakageMeasured
    ? [0.9, 1.1, "measured; a tenth either way for the instrument and the weather"]
    : [0.5, 1.7, `assumed in the load summary, not measured; the spread: ${PRACTICE}`];
  return { ...of, value: airChangesAt50Pa, why, low: airChangesAt50Pa * low, high: airChangesAt50Pa * high };
}

function household({ householdPintsPerDay }: SaidOfHouse, people: number): HouseAssumption {
  const of = { name: "householdPintsPerDay", unit: "pint/day" } as const;
  if (householdPintsPerDay !== null) {
    const value = householdPintsPerDay;
    const why = `${LOAD_SUMMARY}; families differ by half or double (${PRACTICE}); breath is counted apart`;
    return { ...of, value, why, low: value * 0.5, high: value * 2 };
  }
  const pints =
    people * PUBLISHED_SOURCES.showerPints +
    (people * PUBLISHED_SOURCES.dinnerForFourPints) / 4 +
    PUBLISHED_SOURCES.dishesByHandPints;
  return {
    ...of,
    value: pints,
    why: "a shower each, dinner and dishes by hand (published amounts); breath is counted apart",
    low: pints * 0.5,
    high: pints * 2.5,
  };
}

function fixed(name: AssumptionName, value: number, unit: string, why: string): HouseAssumption {
  return { name, value, unit, why, low: value, high: value };
}

// Longer than usual because one comparison, its carriers and its sentence belong together.
import { standardPressurePsia } from "../air";
import { isEngineeringError } from "../errors";
import { type Finding, finding, notMeasured } from "../findings";
import { btuhText } from "../load/readings";
import { requireRange } from "../units";
import {
  DAILY_RANGE_F,
  type DesignDayAssumption,
  type DesignDayChanges,
  type DesignDayInput,
  type DesignDayPeaks,
  designDay,
  GLASS_SHARE_OF_FLOOR,
} from "./design-day";
import { type HouseShell, houseShell, SUBURBAN_SHELTER, storeysOf } from "./house-shell";
import { simulationRules } from "./rules";

/** The load summary as entered so far; `null`: not given. Leakage may stay unknown: it is then assumed. */
export type CrossCheckReadings = {
  readonly [K in Exclude<keyof DesignDayInput, NotRead>]: DesignDayInput[K] | null;
} & {
  readonly latentCoolingBtuh: number | null;
  /** Floor to highest ceiling, ft, 6 to 60: up to 12 counts as one storey, up to 21 as two. */
  readonly houseHeightFt: number | null;
};

/** What follows from the height of the house, is assumed, or is not part of a load calculation. */
type NotRead = "storeys" | "shelterClass" | "leakageMeasured" | "occupants" | "householdPintsPerDay";

/** A difference up to this share of the load summary is left as it is. */
const EXPLAINED_FROM = 0.2;
const LEAKAGE: Carrier = {
  name: "airChangesAt50Pa",
  words: "leakage at 50 Pa",
  unit: " air changes an hour",
  decimals: 1,
  value: 7,
  low: 3,
  high: 12,
};
/** What may carry a difference, and between what it may lie where the house's own assumptions say nothing. */
const SENSIBLE_CARRIERS: readonly Carrier[] = [
  {
    name: "glassShareOfFloor",
    words: "sunlit glass, as a share of the floor",
    unit: "",
    decimals: 2,
    ...GLASS_SHARE_OF_FLOOR,
  },
  {
    name: "applianceBtuh",
    words: "heat of appliances",
    unit: " Btu/h",
    decimals: 0,
    value: 2_400,
    low: 1_200,
    high: 4_800,
  },
  LEAKAGE,
  {
    name: "dailyRangeF",
    words: "the day's range of temperature",
    unit: " °F",
    decimals: 0,
    ...DAILY_RANGE_F,
  },
];
const LATENT_CARRIERS: readonly Carrier[] = [
  LEAKAGE,
  {
    name: "householdPintsPerDay",
    words: "water from bathing, cooking and washing",
    unit: " pints a day",
    decimals: 1,
    value: 4,
    low: 2,
    high: 10,
  },
  { name: "occupants", words: "people", unit: "", decimals: 0, value: 4, low: 1, high: 8 },
];
type Carrier = {
  readonly name: DesignDayAssumption;
  readonly words: string;
  readonly unit: string;
  readonly decimals: number;
  readonly value: number;
  readonly low: number;
  readonly high: number;
};

/**
 * The load summary beside the house model of the year, both on the design day: two ways to the same peaks. A difference over a fifth is
 * explained by the assumption that carries it and is for information, never a verdict.
 *
 * @param readings - Ranges at `DesignDayInput`; `latentCoolingBtuh` 0 to 200,000 Btu/h; `null` where not given.
 * @returns One finding: for information, or `not measured` naming the fields.
 * @throws {@link OutOfRangeError} for what is no number; loads that contradict each other are said in the finding.
 * @see `designDayPeaks` (physics, on assumptions); what counts as different: common practice, no source.
 */
export function crossCheckFindings(readings: CrossCheckReadings): readonly Finding[] {
  const rule = simulationRules.crossCheck;
  const { leakageCfm50, latentCoolingBtuh, houseHeightFt, ...rest } = readings;
  const needed = { ...rest, latentCoolingBtuh, houseHeightFt };
  for (const [name, value] of Object.entries({ ...needed, leakageCfm50 })) {
    if (value !== null) requireRange(name, value, "", -1e6, 1e6);
  }
  const missing = Object.entries(needed).filter(([, value]) => value === null);
  if (missing.length > 0 || latentCoolingBtuh === null || houseHeightFt === null) {
    const names = missing.map(([name]) => name);
    return [notMeasured(rule, names, "Complete the load summary.")];
  }
  const input: DesignDayInput = {
    // Every one of them was just found to be there.
    ...(rest as { readonly [K in keyof typeof rest]: number }),
    leakageCfm50,
    storeys: storeysOf(houseHeightFt),
    shelterClass: SUBURBAN_SHELTER,
  };
  try {
    return [compared(input, latentCoolingBtuh)];
  } catch (error) {
    if (!isEngineeringError(error)) throw error;
    return [
      finding(rule, {
        verdict: null,
        statement: `The house model cannot be laid beside this load summary: ${error.message.replace(/\.$/, "")}.`,
        nextStep: "Look at the loads and design temperatures named here; they do not belong to one house.",
        inputs: Object.keys(needed),
      }),
    ];
  }
}

function compared(input: DesignDayInput, latentCoolingBtuh: number): Finding {
  const ask = designDay(input);
  const peaks = ask({});
  const house: House = {
    ask,
    assumptions: houseShell(input, {}, standardPressurePsia(input.elevationFt)).assumptions,
  };
  const sides = [
    side(
      "sensible",
      house,
      peaks.sensibleBtuh,
      input.sensibleCoolingBtuh,
      SENSIBLE_CARRIERS,
      (found) => found.sensibleBtuh,
    ),
    side("latent", house, peaks.latentBtuh, latentCoolingBtuh, LATENT_CARRIERS, (found) => found.latentBtuh),
  ];
  const told = sides.filter((one) => one.explained !== null);
  return finding(simulationRules.crossCheck, {
    verdict: null,
    statement: `On the design day the house model needs ${btuhText(peaks.sensibleBtuh)} sensible, at ${peaks.peakHour} h, and ${btuhText(peaks.latentBtuh)} latent; the load summary says ${btuhText(input.sensibleCoolingBtuh)} and ${btuhText(latentCoolingBtuh)}. ${
      told.length === 0
        ? "Both lie within a fifth of each other."
        : told.map((one) => one.explained).join(" ")
    }`,
    figures: [
      { label: "sensible, house model", value: peaks.sensibleBtuh, unit: "Btu/h", decimals: 0 },
      { label: "latent, house model", value: peaks.latentBtuh, unit: "Btu/h", decimals: 0 },
      { label: "of it through the enclosure", value: peaks.parts.enclosure, unit: "Btu/h", decimals: 0 },
      { label: "outdoor air, sensible", value: peaks.parts.outdoorAir, unit: "Btu/h", decimals: 0 },
      { label: "sun", value: peaks.parts.sun, unit: "Btu/h", decimals: 0 },
      { label: "people and appliances", value: peaks.parts.gains, unit: "Btu/h", decimals: 0 },
      { label: "outdoor air, latent", value: peaks.latentParts.outdoorAir, unit: "Btu/h", decimals: 0 },
    ],
    nextStep:
      told.length === 0
        ? null
        : "Look in the designer's calculation what it has for this, and which of the two is the house.",
    inputs: ["sensibleCoolingBtuh", "latentCoolingBtuh", "heatingBtuh"],
  });
}

/** One house, asked with one assumption after the other. */
type House = {
  readonly ask: (changed: DesignDayChanges) => DesignDayPeaks;
  readonly assumptions: HouseShell["assumptions"];
};

/** One of the two comparisons; `explained` says what carries the difference, where there is one. */
function side(
  name: "sensible" | "latent",
  house: House,
  model: number,
  summary: number,
  carriers: readonly Carrier[],
  of: (peaks: DesignDayPeaks) => number,
): { readonly explained: string | null } {
  const gap = summary - model;
  if (Math.abs(gap) <= EXPLAINED_FROM * Math.max(summary, 1)) return { explained: null };
  const much = summary >= 100 ? `${Math.round((100 * Math.abs(gap)) / summary)} %` : btuhText(Math.abs(gap));
  const apart = `The model's ${name} load is ${much} ${gap > 0 ? "below" : "above"} the summary's`;
  const best = carriers
    .flatMap((carrier) => reach(house, carrier, model, gap, of))
    .reduce<Reach | null>((most, one) => (most === null || one.closes > most.closes ? one : most), null);
  if (best === null) return { explained: `${apart}, and no single assumption accounts for it.` };
  const { carrier, from, to, closes } = best;
  const text = (value: number) => `${value.toFixed(carrier.decimals)}${carrier.unit}`;
  return {
    explained: `${apart}; what explains most of it is ${carrier.words}: ${text(from)} assumed, ${text(to)} would close about ${
      closes >= 1 ? "all of it" : `${Math.round(100 * closes)} % of it`
    }.`,
  };
}

type Reach = {
  readonly carrier: Carrier;
  readonly from: number;
  readonly to: number;
  readonly closes: number;
};

/** How much of the gap an assumption closes between where it is put and where it may honestly lie. */
function reach(
  { ask, assumptions }: House,
  carrier: Carrier,
  model: number,
  gap: number,
  of: (peaks: DesignDayPeaks) => number,
): readonly Reach[] {
  const assumed = assumptions.find((one) => one.name === carrier.name);
  const from = assumed?.value ?? carrier.value;
  // The house's own range where it has one (measured leakage lies close), the carrier's otherwise.
  const ends =
    assumed !== undefined && assumed.low < assumed.high
      ? [assumed.low, assumed.high]
      : [Math.min(carrier.low, from), Math.max(carrier.high, from)];
  return ends.flatMap((end) => {
    const moved = peaksOrNull(ask, { [carrier.name]: end });
    if (moved === null || end === from) return [];
    const closes = (of(moved) - model) / gap;
    if (!(closes > 0.1)) return [];
    const enough = Math.min(closes, 1);
    return [{ carrier, from, to: from + ((end - from) * enough) / closes, closes: enough }];
  });
}

/** `null` where the assumption contradicts the loads. */
function peaksOrNull(ask: House["ask"], changed: DesignDayChanges): DesignDayPeaks | null {
  try {
    return ask(changed);
  } catch (error) {
    if (!isEngineeringError(error)) throw error;
    return null;
  }
}

import { moistAir, standardPressurePsia } from "../air";
import { cos, exp, power } from "../exact-functions";
import { outdoorAirLoad } from "../load";
import { CONDENSING_HEAT_BTU_PER_LB } from "../moisture";
import { requireRange } from "../units";
import { clearDayLight } from "./design-day-sun";
import type { AssumptionName } from "./house-assumptions";
import { difference, houseShell, type LoadForHouse } from "./house-shell";

/** What the design day needs beside the load summary's sensible side. */
export type DesignDayInput = LoadForHouse & {
  readonly elevationFt: number;
  /** 10 to 90 %. */
  readonly indoorCoolingRhPct: number;
  /** Not above the dry bulb. */
  readonly outdoorCoolingWbF: number;
};

/** Assumptions of the design day alone. */
export type DesignDayAssumption = AssumptionName | "glassShareOfFloor" | "dailyRangeF";

/** Assumptions put otherwise, by name. */
export type DesignDayChanges = Partial<Readonly<Record<DesignDayAssumption, number>>>;

/** Peak loads of the house on its design day, and what they are made of. */
export type DesignDayPeaks = {
  readonly sensibleBtuh: number;
  readonly latentBtuh: number;
  /** Hour of the day whose mean load is the largest, 1 to 24. */
  readonly peakHour: number;
  /** Of the sensible peak, Btu/h; sun and gains as they arrive from the mass. */
  readonly parts: {
    readonly enclosure: number;
    readonly outdoorAir: number;
    readonly sun: number;
    readonly gains: number;
  };
  readonly latentParts: { readonly outdoorAir: number; readonly inside: number };
};

/** Glass that lets all light in, as a share of the floor: 15 % of the floor is glass, a third of its light comes in. Common practice, no source. */
export const GLASS_SHARE_OF_FLOOR = { value: 0.05, low: 0.03, high: 0.09 };
/** Between night and afternoon, °F. Common practice, no source. */
export const DAILY_RANGE_F = { value: 20, low: 14, high: 28 };
/** Hours after midnight when it is hottest. Common practice, no source. */
const HOTTEST_AT_H = 15.5;
const RADIANT_SHARE = 0.5;

/**
 * Peak loads of the simulation's house on a design day that repeats, with its air held at the indoor design: outdoors a sine that peaks
 * at the design temperature, sun of a clear July day through glass that is assumed and not fitted to the load, mass that gives its heat
 * back with its own time constant. In a room held steady the mass follows `dq/dt = (K/C)(radiant − q)`, which is solved exactly from hour
 * to hour, so no minutes are run.
 *
 * @param input - Ranges at `LoadForHouse`; elevation −1,000 to 12,000 ft; design temperatures at least 5 °F apart.
 * @param changed - Assumptions put otherwise, by name, in their unit; 0 or more; `glassShareOfFloor` to 0.5, `dailyRangeF` to 60 °F.
 * @returns Btu/h.
 * @throws {@link OutOfRangeError} outside those ranges; {@link ImpossibleStateError} for loads that contradict each other.
 * @see Balances of the house model (physics); clear-sky light (recalled); assumptions: common practice, no source, where not said otherwise.
 */
export function designDayPeaks(input: DesignDayInput, changed: DesignDayChanges = {}): DesignDayPeaks {
  return designDay(input)(changed);
}

/**
 * {@link designDayPeaks} for one house asked with many assumptions: the states of its air hang on none of them and are found once.
 *
 * @param input - As there.
 * @returns The peaks, Btu/h, with assumptions put otherwise.
 * @throws {@link OutOfRangeError} when asked, as there.
 * @see As there.
 */
export function designDay(input: DesignDayInput): (changed: DesignDayChanges) => DesignDayPeaks {
  let known: ReturnType<typeof designDayAir> | null = null;
  return (changed) =>
    peaksWith(input, changed, (pressurePsia) => {
      known ??= designDayAir(input, pressurePsia);
      return known;
    });
}

function peaksWith(
  input: DesignDayInput,
  changed: DesignDayChanges,
  airAt: (pressurePsia: number) => ReturnType<typeof designDayAir>,
): DesignDayPeaks {
  const { glassShareOfFloor, dailyRangeF, ...ofHouse } = changed;
  const { indoorCoolingDbF, outdoorCoolingDbF, elevationFt } = input;
  requireRange("elevationFt", elevationFt, "ft", -1_000, 12_000);
  const pressurePsia = standardPressurePsia(elevationFt);
  const shell = houseShell(input, ofHouse, pressurePsia);
  difference(outdoorCoolingDbF, indoorCoolingDbF, "outdoorCoolingDbF", "indoorCoolingDbF");
  const share = requireRange(
    "glassShareOfFloor",
    glassShareOfFloor ?? GLASS_SHARE_OF_FLOOR.value,
    "ratio",
    0,
    0.5,
  );
  const range = requireRange("dailyRangeF", dailyRangeF ?? DAILY_RANGE_F.value, "Δ°F", 0, 60);
  const hoursOfMass =
    shell.assumed("massCapacitanceBtuPerFFt2") / Math.max(shell.assumed("massCouplingBtuhPerFFt2"), 1e-6);

  const sunIn = clearDayLight().map((light) => light * share * shell.areaFt2);
  const sun = throughMass(sunIn, hoursOfMass);
  const gains = shell.gainsBtuh;
  const hours = sun.map((fromSun, hour) => {
    const outdoorF =
      outdoorCoolingDbF - (range / 2) * (1 - cos((2 * Math.PI * (hour + 0.5 - HOTTEST_AT_H)) / 24));
    const warmerF = outdoorF - indoorCoolingDbF;
    const enclosure = shell.conductanceBtuhPerF * warmerF;
    const outdoorAir = shell.outdoorAirBtuhPerF(warmerF) * warmerF;
    return { hour, enclosure, outdoorAir, sun: fromSun, total: enclosure + outdoorAir + fromSun + gains };
  });
  const peak = hours.reduce((most, one) => (one.total > most.total ? one : most));

  const fromAir = outdoorAirLoad({
    airflowCfm: shell.outdoorAirCfm(outdoorCoolingDbF - indoorCoolingDbF),
    ...airAt(pressurePsia),
  }).latentBtuh;
  const inside = shell.waterLbPerH * CONDENSING_HEAT_BTU_PER_LB;
  return {
    sensibleBtuh: peak.total,
    // Air drier than indoors takes water out, but a load summary counts no credit for it.
    latentBtuh: Math.max(0, fromAir) + inside,
    peakHour: peak.hour + 1,
    parts: { enclosure: peak.enclosure, outdoorAir: peak.outdoorAir, sun: peak.sun, gains },
    latentParts: { outdoorAir: Math.max(0, fromAir), inside },
  };
}

function designDayAir(input: DesignDayInput, pressurePsia: number) {
  const { indoorCoolingDbF, indoorCoolingRhPct, outdoorCoolingDbF, outdoorCoolingWbF } = input;
  return {
    outdoor: moistAir({ dryBulbF: outdoorCoolingDbF, wetBulbF: outdoorCoolingWbF, pressurePsia }),
    indoor: moistAir({
      dryBulbF: indoorCoolingDbF,
      relativeHumidityPct: requireRange("indoorCoolingRhPct", indoorCoolingRhPct, "%", 10, 90),
      pressurePsia,
    }),
  };
}

/**
 * Heat that arrives in the air of a day that repeats, hour by hour: half at once, half out of the mass.
 *
 * @param heat - 24 hourly means, Btu/h, 0 or more.
 * @param timeConstantH - Of the mass, h, more than 0.
 * @returns 24 hourly means, Btu/h; over the day as much as went in.
 * @see First-order response to a steady input, `q(t) = R + (q0 − R) exp(−t/τ)` (physics).
 */
export function throughMass(heat: readonly number[], timeConstantH: number): readonly number[] {
  const kept = exp(-1 / timeConstantH);
  const meanKept = timeConstantH * (1 - kept);
  // Where the day begins so that it ends there too.
  let flow =
    heat.reduce((carried, one) => carried * kept + (1 - kept) * RADIANT_SHARE * one, 0) /
    (1 - power(kept, heat.length));
  return heat.map((one) => {
    const radiant = RADIANT_SHARE * one;
    const mean = radiant + (flow - radiant) * meanKept;
    flow = radiant + (flow - radiant) * kept;
    return one - radiant + mean;
  });
}

import type { Refrigerant } from "@/lib/engineering/refrigerant";
import { requireRange } from "../units";
import type { DeliveredCapacity } from "./delivered-capacity";
import { type ExpectedCapacity, requireExpected } from "./expected-at-conditions";
import { type Readings, requireReadings } from "./readings";

/** One stage of a startup as read and as it should be. `null`: not given. */
export type StartupStage = {
  /** Its name in a sentence, such as "First stage". */
  readonly stage: string;
  readonly mode: "cooling" | "heating";
  /** Steady running before the readings, min. */
  readonly steadyMinutes: number | null;
  readonly readings: Readings;
  /** How long the drain water was caught, min. */
  readonly condensateMinutes: number | null;
  /** What the maker's data give at the conditions of these readings. */
  readonly expected: ExpectedCapacity;
  /** What these readings show at this site and these limits, where the caller has computed it; left out or `null`: computed here. */
  readonly delivered?: DeliveredCapacity | null;
  readonly makerSuperheatF: number | null;
  readonly makerSubcoolingF: number | null;
  readonly designCfm: number | null;
  readonly designStaticInWc: number | null;
  readonly maximumStaticInWc: number | null;
  readonly nameplateVolts: number | null;
  readonly ratedAmps: number | null;
};

/** What all stages of a startup share. */
export type StartupSite = {
  /** ft. −2,000 to 20,000. */
  readonly elevationFt: number | null;
  readonly refrigerant: Refrigerant | null;
  readonly meteringDevice: "fixed orifice" | "expansion valve" | null;
  /** Day of the readings, YYYY-MM-DD. */
  readonly measuredOn: string | null;
};

/** Unit and range of the numbers of a stage that are not readings. */
const STAGE_NUMBERS = {
  steadyMinutes: ["min", 0, 1_440],
  condensateMinutes: ["min", 1, 1_440],
  makerSuperheatF: ["°F", 0, 60],
  makerSubcoolingF: ["°F", 0, 60],
  designCfm: ["cfm", 50, 20_000],
  designStaticInWc: ["in. w.c.", 0.05, 5],
  maximumStaticInWc: ["in. w.c.", 0.05, 5],
  nameplateVolts: ["V", 100, 600],
  ratedAmps: ["A", 0.5, 400],
} as const satisfies Partial<Record<keyof StartupStage, readonly [string, number, number]>>;

/**
 * Refuses a stage with a number that cannot be, naming the field.
 *
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} for inputs that cannot be, naming the field.
 */
export function requireStage(stage: StartupStage, fieldPrefix: string): void {
  requireReadings(stage.readings, fieldPrefix);
  requireExpected(stage.expected, `${fieldPrefix}expected.`);
  for (const name of Object.keys(STAGE_NUMBERS) as (keyof typeof STAGE_NUMBERS)[]) {
    const value = stage[name];
    const [unit, min, max] = STAGE_NUMBERS[name];
    if (value !== null) requireRange(`${fieldPrefix}${name}`, value, unit, min, max);
  }
}

/**
 * Refuses an elevation outside the standard atmosphere's use here.
 *
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} for inputs that cannot be, naming the field.
 */
export function requireSite(site: StartupSite): void {
  if (site.elevationFt !== null) requireRange("elevationFt", site.elevationFt, "ft", -2_000, 20_000);
}

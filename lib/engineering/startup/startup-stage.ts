import type { Refrigerant } from "@/lib/engineering/refrigerant";
import type { ExpectedCapacity } from "./expected-at-conditions";
import type { Readings } from "./readings";

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

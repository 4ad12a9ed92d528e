import type { MonthRangesWords } from "@/lib/charts/month-ranges";
import type { KeptForecast } from "@/lib/domain/forecast";

/** Every sentence and name of the homeowner's packet that is not on a form of its own. */
export type HomeownerTexts = {
  /** Names of ledger lines by key, and of their groups; where none is given the ledger's own stands. */
  readonly lines: Readonly<Record<string, string>>;
  readonly groups: Readonly<Record<string, string>>;
  /** What a measured quantity means to somebody outside the trade, by ledger line. */
  readonly plainWords: Readonly<Record<string, string>>;
  /** Names of settings by field, and why each is as it is. */
  readonly settings: Readonly<Record<string, string>>;
  readonly why: Readonly<Record<string, string>>;
  readonly howToRun: readonly string[];
  readonly whenToCall: readonly string[];
  readonly cautions: readonly string[];
  readonly compressors: Readonly<Record<string, string>>;
  /** Words that stand as values: of choices and of short remarks. */
  readonly values: Readonly<Record<string, string>>;
  readonly units: Readonly<Record<string, string>>;
  /** Remarks in ledger cells, and notes without which their number would be misread, and what is printed of each. */
  readonly notes: readonly (readonly [RegExp, string])[];
  /** Names and reasons that are other ones on equipment with one stage. */
  readonly oneStage: Readonly<Record<string, { readonly name: string; readonly why: string }>>;
  readonly promise: string;
  readonly temperature: string;
  readonly humidityAtMost: string;
  readonly equipment: string;
  readonly modelNumber: string;
  readonly compressor: string;
  readonly nominalSize: string;
  readonly refrigerant: string;
  readonly setTo: string;
  readonly notGiven: string;
  readonly notDecided: string;
  readonly notSelected: string;
  readonly tons: string;
  readonly yes: string;
  readonly no: string;
  readonly startup: string;
  readonly notSigned: string;
  readonly review: string;
  readonly noDate: string;
  readonly maintenance: string;
  readonly laborWarranty: string;
  readonly partsWarranty: string;
  readonly afterStartup: (years: number) => string;
  readonly monthsAfterStartup: (months: number) => string;
  readonly inGallons: string;
  readonly design: (figure: string) => string;
  readonly fanTable: (figure: string) => string;
  readonly atLeast: (figure: string) => string;
  readonly atMost: (figure: string) => string;
  readonly between: (low: string, high: string) => string;
  readonly gaveCooling: (figure: string) => string;
  readonly tookWater: (figure: string) => string;
  readonly movedAir: (figure: string) => string;
  readonly spentDry: (figure: string, share: string, hours: string) => string;
  readonly period: (from: string, to: string) => string;
  readonly forecast: ForecastTexts;
  readonly dryHours: string;
  readonly ofLogged: (hours: string) => string;
  readonly time50to60: string;
  readonly meanHumidity: string;
  readonly logWords: string;
  /** `null`: the chart's own words stand. */
  readonly chart: null | {
    readonly labels: Readonly<Record<string, string>>;
    readonly months: Readonly<Record<string, string>>;
    readonly said: (facts: ChartFacts) => string;
  };
};

/** What a packet says of the forecast kept with the job. */
export type ForecastTexts = {
  readonly sentence: (kept: KeptForecast) => string;
  /** What it rests on, and that it is no guarantee. */
  readonly restsOn: (houses: string) => string;
  readonly changedSince: (day: string) => string;
  readonly dryHours: string;
  readonly dryHoursMean: string;
  readonly hoursAbove: string;
  readonly ofHours: (needed: string, hours: string) => string;
  readonly range: (low: string, high: string) => string;
  /** The months' picture. `null`: its own words stand. */
  readonly months: MonthRangesWords | null;
};

export type ChartFacts = {
  readonly from: string;
  readonly to: string;
  readonly readings: string;
  readonly lowest: string;
  readonly highest: string;
  readonly above: string;
  readonly limit: string;
};

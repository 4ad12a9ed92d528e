import type {
  ForecastOption,
  HouseAssumption,
  LoadForHouse,
  OptionForecast,
  UncertainNumber,
} from "@/lib/engineering/simulation";
import type { ForecastChanges, SystemAssumption } from "./assumptions";

/** Raised when the same inputs would give other numbers. Kept with every forecast; another one makes it stale. */
export const FORECAST_VERSION = "4";
/** What a kept forecast is drawn with, so that the same design gives the same numbers. */
export const FORECAST_SEED = 1;
export const FORECAST_MEMBERS = 10;

/** The figures of a forecast without what is only drawn and the central house's whole account. */
export type ForecastFigures = Omit<
  OptionForecast,
  "name" | "central" | "pictures" | "coolingHoursByMonth" | "meanRhPctByMonth"
>;

/** What a kept forecast was computed from, beside the weather. */
export type KeptInputs = {
  readonly load: LoadForHouse;
  readonly changed: ForecastChanges;
  readonly option: ForecastOption;
  readonly humidityLimitPct: number;
};

/** The forecast of a job's design as it was kept, in short: for ledger, lists and packets. */
export type KeptForecast = {
  readonly id: string;
  /** Name of the option chosen then; "As the records stand" when none was. */
  readonly optionLabel: string;
  readonly weatherFileId: string;
  readonly weatherName: string;
  readonly engineVersion: string;
  readonly inputsHash: string;
  readonly seed: number;
  readonly members: number;
  readonly humidityLimitPct: number;
  readonly keptAt: string;
  readonly keptByName: string;
  /** `null` while it is in force. */
  readonly supersededAt: string | null;
  readonly inputs: KeptInputs;
  readonly figures: ForecastFigures;
};

/** The rest of it: for pictures, the page of its assumptions, and what the house lived. */
export type KeptForecastWhole = KeptForecast & { readonly result: KeptResult };

export type KeptResult = {
  readonly houseAssumptions: readonly HouseAssumption[];
  readonly systemAssumptions: readonly SystemAssumption[];
  readonly uncertain: readonly UncertainNumber[];
  readonly central: OptionForecast["central"];
  readonly pictures: OptionForecast["pictures"];
};

/** The kept forecast as a job's findings and ledger see it: with whether the design has changed since. */
export type ForecastInForce = KeptForecast & { readonly stale: boolean };

export { type ComparedOption, compareOptions, type YearOption } from "./compare-options";
export { type CoolingTable, coolingTableAt } from "./cooling-table";
export { type CrossCheckReadings, crossCheckFindings } from "./cross-check";
export {
  type DesignDayAssumption,
  type DesignDayInput,
  type DesignDayPeaks,
  designDayPeaks,
} from "./design-day";
export { FIT_BOUNDS, FIT_FACTORS, type FitFactor, type FitFactors } from "./fit-factors";
export {
  type FitError,
  fitHouseToLog,
  fittedHouse,
  type HouseFit,
  houseWithFactors,
} from "./fit-house";
export { type ForecastInput, forecastYears, type PreparedForecast, prepareForecast } from "./forecast";
export {
  type Forecast,
  type ForecastRange,
  gatherForecast,
  type OptionForecast,
  RANGED_FIGURES,
  type RangedFigure,
} from "./gather-forecast";
export type { HouseModel, SunAperture, VentilationModel } from "./house";
export type { AssumptionName, HouseAssumption } from "./house-assumptions";
export { type DerivedHouse, houseFromLoadSummary, type LoadForHouse } from "./house-from-load-summary";
export type { HouseLog } from "./house-log";
export {
  type ForecastHouse,
  type HouseMember,
  type HouseMembers,
  houseMembers,
  type UncertainNumber,
} from "./house-members";
export { SUBURBAN_SHELTER, storeysOf } from "./house-shell";
export { type ForecastOption, type MemberYear, memberYear, type YearFigures } from "./member-year";
export { simulationRules } from "./rules";
export {
  type SearchProgress,
  type SettingSensitivity,
  searchSettings,
  settingSensitivity,
} from "./search-settings";
export type {
  SearchAxis,
  SearchChoice,
  SearchFound,
  SearchInput,
  SearchPlace,
  SearchSpace,
} from "./search-space";
export { simulateYear } from "./simulate-year";
export { stableText } from "./stable-text";
export type {
  DehumidifierModel,
  HeldCoilStage,
  HeldCoilSystem,
  SystemModel,
  TableStage,
  TableSystem,
  YearControls,
} from "./system";
export { shiftWeather, type WeatherShift } from "./weather-shift";
export {
  type DaySeries,
  type HourSeries,
  type TypicalHours,
  typicalHours,
  type YearPictures,
  yearPictures,
} from "./year-pictures";
export type { YearInput } from "./year-plan";
export type { Balance, YearResult } from "./year-result";

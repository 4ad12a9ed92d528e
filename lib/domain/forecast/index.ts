export { type ForecastAdvice, type ForecastPromise, forecastAdvice, MOST_DEGREE_HOURS } from "./advice";
export {
  type ForecastChanges,
  HOUSE_ASSUMPTION_WORDS,
  NO_CHANGES,
  SYSTEM_ASSUMPTIONS,
  type SystemAssumption,
  type SystemAssumptionName,
} from "./assumptions";
export {
  FORECAST_MEMBERS,
  FORECAST_SEED,
  FORECAST_VERSION,
  type ForecastFigures,
  type ForecastInForce,
  type KeptForecast,
  type KeptForecastWhole,
  type KeptInputs,
} from "./kept";
export { type ForecastMissing, type ForecastPart, missingHref } from "./missing";
export { type ForecastEvent, forecastEvents } from "./run";
export {
  type SearchEvent,
  type SearchOrder,
  type SearchStanding,
  type SearchTask,
  searchBoard,
  searchEvents,
} from "./run-search";
export { type OptionSearch, optionSearch } from "./search";
export { SEARCH_AXIS_WORDS, sensitivityWords } from "./sensitivity";
export { forecastSentence, weatherPlace } from "./sentence";
export { type JobSetup, jobSetup, missingOf, namedApart, type OptionSetup, optionSetup } from "./setup";
export { packWeather, unpackWeather } from "./weather-bytes";
export { dayOfYearText, humidityShares, MONTH_NAMES, shortRunsPct, stageRuns, wettestMonths } from "./words";

export { type ComparedOption, compareOptions, type YearOption } from "./compare-options";
export type { HouseModel, SunAperture, VentilationModel } from "./house";
export type { AssumptionName, HouseAssumption } from "./house-assumptions";
export { type DerivedHouse, houseFromLoadSummary, type LoadForHouse } from "./house-from-load-summary";
export { simulationRules } from "./rules";
export { simulateYear } from "./simulate-year";
export type { DehumidifierModel, SystemModel, SystemStage, YearControls } from "./system";
export type { YearInput } from "./year-plan";
export type { Balance, YearResult } from "./year-result";

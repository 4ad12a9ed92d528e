export { type MoistureBalance, type MoistureCondition, moistureBalance, supplementalNeed } from "./balance";
export { bufferedMoistureLb, bufferTimeConstant } from "./buffer";
export {
  gallonsPerHour,
  LB_PER_GALLON,
  LB_PER_PINT,
  lbPerHFromGallonsPerHour,
  lbPerHFromPintsPerDay,
  pintsPerDay,
} from "./convert";
export {
  BTUH_PER_W,
  CONDENSING_HEAT_BTU_PER_LB,
  type DehumidifierPerformance,
  type DehumidifierPoint,
  dehumidifierAt,
  dehumidifierHeatBtuh,
  RATING_CONDITIONS,
} from "./dehumidifier";
export {
  effectiveSensibleRatio,
  type FanBetweenCalls,
  type LatentRatio,
  type LatentRatioInput,
  latentRatio,
  wetCoilAtConditions,
} from "./latent-ratio";
export { waterFromLatent } from "./latent-water";
export { moistureLimits } from "./limits";
export { type ConditionEntry, type MoistureFindingsInput, moistureFindings } from "./moisture-findings";
export {
  type HouseholdMoisture,
  householdMoistureLbPerH,
  outdoorAirMoistureLbPerH,
  PUBLISHED_SOURCES,
} from "./moisture-sources";
export { type MoistureRemoval, moistureRemoval } from "./removal";
export { moistureRules } from "./rules";

export { type CondensateComparison, condensateComparison } from "./condensate";
export { type Deciding, decidingReading } from "./deciding-reading";
export {
  type AirReadingName,
  type AirReadings,
  type DeliveredCapacity,
  deliveredCapacity,
} from "./delivered-capacity";
export {
  type ExpectedCapacity,
  type ExpectedComparison,
  expectedAtConditions,
} from "./expected-at-conditions";
export {
  type AccuracyKind,
  accuracyToStandardUncertainty,
  type Instrument,
  PERCENT_OF_READING,
  type Reading,
} from "./instrument";
export { startupLimits } from "./limits";
export type { SanityQuestion } from "./question";
export { READING_NAMES, READINGS, type ReadingName, type Readings } from "./readings";
export { startupRules } from "./rules";
export { sanityQuestions } from "./sanity-questions";
export type { StartupLimitValues } from "./stage-check";
export { type StartupInput, startupFindings } from "./startup-findings";
export type { StartupSite, StartupStage } from "./startup-stage";
export {
  COVERAGE_FACTOR,
  type Correlation,
  type UncertainInput,
  type UncertaintyShare,
  type UncertainValue,
  withUncertainty,
} from "./with-uncertainty";

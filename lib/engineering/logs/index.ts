export { analyzeLog, type LogAnalysis } from "./analyze-log";
export { besideLog } from "./beside";
export type { LikelyCause } from "./cause-signs";
export type { LogContext } from "./context";
export { type DayOverlay, dayOverlay, OVERLAY_CHANNELS, type OverlayChannel } from "./day-overlay";
export { whyDryIsUntold } from "./dry-told";
export type { HumidDays } from "./humid-days";
export type { HumidityAnalysis, WetSpell } from "./humidity";
export type { LogLimits } from "./judged";
export { likelyCauses } from "./likely-causes";
export { logsLimits } from "./limits";
export type { LoadDay } from "./load-days";
export type { LoadLine } from "./load-line";
export { logFindings } from "./log-findings";
export { logMoisture } from "./log-moisture";
export {
  type AfterCyclePoint,
  type HourOfMonth,
  type LogPictures,
  logPictures,
  type StagesOfHour,
} from "./log-pictures";
export { mergeSamples } from "./merge-samples";
export type { MoistureSources } from "./moisture-sources";
export { logsRules } from "./rules";
export type { Lengths, RunLength, RunningAnalysis } from "./running";
export { LOG_CHANNELS, LOG_RANGES, type LogChannel, type LogSamples } from "./samples";
export type { SensorAnalysis, StillStretch } from "./sensors";
export type { SetpointAnalysis } from "./setpoints";
export { type TradePicture, tradePicture } from "./trade-picture";

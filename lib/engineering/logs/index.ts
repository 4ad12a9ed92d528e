export { analyzeLog, type LogAnalysis } from "./analyze-log";
export type { LogContext } from "./context";
export type { HumidityAnalysis, HumidityGroup, WetSpell } from "./humidity";
export type { LoadDay, LoadLine } from "./load-line";
export type { MoistureSources } from "./moisture-sources";
export type { Lengths, RunningAnalysis } from "./running";
export { LOG_CHANNELS, LOG_RANGES, type LogChannel, type LogSamples } from "./samples";
export type { SensorAnalysis, StillStretch } from "./sensors";

export { LOG_CHANNELS, LOG_RANGES, type LogChannel, type LogSamples } from "./samples";

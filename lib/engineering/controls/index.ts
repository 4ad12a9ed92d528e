export type { HouseAfternoon, OutdoorCourse, StageCapacity } from "./afternoon";
export { controlFindings } from "./control-findings";
export type { ControlFindingsInput, CorrectionReadings, WetCoil } from "./input";
export { controlsLimits } from "./limits";
export { controlsRules } from "./rules";
export {
  type AsEntered,
  type BoardSettings,
  type ControlSettings,
  FAN_BETWEEN_CALLS,
  type FanBetweenCalls,
} from "./settings";
export { type Timeline, type TimelineInput, thermostatTimeline } from "./thermostat-timeline";
export type { TimelineMinute, TimelineSummary } from "./timeline-summary";

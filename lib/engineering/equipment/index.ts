export { type CeilingPoint, capacityCeilingBtuh } from "./capacity-ceiling";
export {
  type AirflowSetting,
  type CapacitySetting,
  type Coil,
  capacityMap,
  FITS,
  type Fit,
  judgeFit,
  type MapCell,
} from "./capacity-map";
export { airAfterCoil } from "./coil-balance";
export { coilAtFlow, solveCoil, solveCoilAtCapacity } from "./coil-core";
export {
  bypassFactorAt,
  coilFromRating,
  type RatedCoil,
  ratedApproachF,
  ratedLeavingAir,
} from "./coil-from-rating";
export { COIL, COIL_LIMIT, type CoilAtFlow, type CoilConstants, coilNumbers } from "./coil-numbers";
export { type CoilState, LIMITING, type LimitedBy } from "./coil-state";
export { type Approach, type CoilTemperatureHeldSystem, coilConstants } from "./coil-system";
export { coilTemperatureHeld } from "./coil-temperature-held";
export { type CoolingMatch, type CoolingRatios, coolingRatios, type EquipmentKind } from "./cooling-ratios";
export {
  auxiliaryHeatKw,
  type BalancePoint,
  BTUH_PER_KW,
  balancePoint,
  type HeatingLines,
  heatingFindings,
} from "./heating";
export { type HumidityCapability, humidityCapability } from "./humidity-capability";
export { equipmentLimits } from "./limits";
export {
  type AxisNotVaried,
  PERFORMANCE_AXES,
  type Performance,
  type PerformanceAxis,
  type PerformanceConditions,
  type PerformancePoint,
  type PointUsed,
  performanceAt,
} from "./performance-table";
export { equipmentRules } from "./rules";
export { sizingFindings } from "./sizing-findings";
export type { SizingEdition, SizingInput } from "./sizing-input";
export { type SettlingShape, type StageDrop, stageDropTransient, type TransientMinute } from "./stage-drop";

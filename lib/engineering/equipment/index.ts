export { type CeilingPoint, capacityCeilingBtuh } from "./capacity-ceiling";
export {
  type AirflowSetting,
  type CapacitySetting,
  type Coil,
  capacityMap,
  FITS,
  type Fit,
  type MapCell,
} from "./capacity-map";
export {
  COIL,
  COIL_LIMIT,
  COIL_OUTPUTS,
  type CoilConstants,
  solveCoil,
  solveCoilAtCapacity,
} from "./coil-core";
export {
  bypassFactorAt,
  coilFromRating,
  type RatedCoil,
  ratedApproachF,
  ratedLeavingAir,
} from "./coil-from-rating";
export {
  type Approach,
  type CoilState,
  type CoilTemperatureHeldSystem,
  coilConstants,
  coilTemperatureHeld,
  LIMITING,
  type LimitedBy,
} from "./coil-temperature-held";
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
export { type SizingEdition, type SizingInput, sizingFindings } from "./sizing-findings";
export { type SettlingShape, type StageDrop, stageDropTransient, type TransientMinute } from "./stage-drop";

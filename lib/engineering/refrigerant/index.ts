export { refrigerantCautions } from "./cautions";
export {
  LEAST_TARGET_SUPERHEAT_F,
  lineSetAdjustmentOz,
  subcoolingF,
  superheatF,
  targetSuperheatF,
} from "./charge";
export { type ChargeReadings, chargeFindings } from "./charge-findings";
export { findMinimumRoomAreaFt2, flammableChargeLimits, isFlammable } from "./flammable";
export { type FlammableChargeReadings, flammableChargeFindings } from "./flammable-findings";
export { absolutePressurePsia, gaugePressurePsig } from "./gauge";
export { refrigerantLimits } from "./limits";
export { type LineSetReadings, lineSetFindings } from "./line-set-findings";
export { refrigerantRules } from "./rules";
export {
  REFRIGERANTS,
  type Refrigerant,
  type SaturationSide,
  saturationPressurePsia,
  saturationRangePsia,
  saturationTempF,
  saturationTempUncertaintyF,
  saturationUncertaintyPct,
} from "./saturation";
export { expectedTestPressurePsig } from "./tightness";
export {
  type EvacuationReadings,
  evacuationFindings,
  type PressureTestReadings,
  pressureTestFindings,
} from "./tightness-findings";

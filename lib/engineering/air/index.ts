export { densityRatio, SEA_LEVEL_PRESSURE_PSIA, standardPressurePsia } from "./atmosphere";
export { type AirSideCapacity, airSideCapacity } from "./capacity";
export type { MoistAirInput } from "./given-moisture";
export { type AirStream, mixAir } from "./mixing";
export { type MoistAir, moistAir, waterSaturationPressurePsia } from "./moist-air";
export {
  QUICK_LATENT_FACTOR,
  QUICK_SENSIBLE_FACTOR,
  QUICK_TOTAL_FACTOR,
  quickLatentBtuh,
  quickMoistureLbPerH,
  quickSensibleBtuh,
  quickTotalBtuh,
} from "./quick-checks";
export { airRules } from "./rules";
export { requireSamePressure } from "./same-pressure";

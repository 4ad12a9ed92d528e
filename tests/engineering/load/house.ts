import { seedLimits } from "@/lib/engineering/limit-definition";
import { type LoadReadings, loadLimits } from "@/lib/engineering/load";

export const limits = seedLimits(loadLimits);

/** A house designed as it is: 36,000 Btu/h of heating over 50 °F, so 720 Btu/h for each °F. */
export const house: LoadReadings = {
  sensibleCoolingBtuh: 24_000,
  latentCoolingBtuh: 6_000,
  heatingBtuh: 36_000,
  indoorCoolingDbF: 75,
  indoorCoolingRhPct: 50,
  indoorHeatingDbF: 70,
  outdoorCoolingDbF: 95,
  outdoorCoolingWbF: 75,
  outdoorHeatingDbF: 20,
  weatherCoolingDbF: 94,
  weatherHeatingDbF: 22,
  wetMildDewPointF: 74,
  wetMildDbF: 78,
  elevationFt: 0,
  floorAreaFt2: 2_000,
  bedrooms: 3,
  houseHeightFt: 8.2,
  leakageCfm50: 2_000,
  leakageKnownBy: "measured",
  windShieldingFactor: 0.5,
  ventilationCfm: 60,
  ductsInside: true,
  ductLoadBtuh: 0,
  duplicatedGainsBtuh: 0,
  safetyFactorPct: 0,
};

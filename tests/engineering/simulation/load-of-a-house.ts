import type { LoadForHouse } from "@/lib/engineering/simulation";

/** An invented load summary that holds together with the coastal weather. */
export const LOAD: LoadForHouse = {
  heatingBtuh: 30_000,
  sensibleCoolingBtuh: 24_000,
  indoorHeatingDbF: 70,
  outdoorHeatingDbF: 30,
  indoorCoolingDbF: 75,
  outdoorCoolingDbF: 94,
  floorAreaFt2: 2_000,
  bedrooms: 3,
  leakageCfm50: 1_500,
  ventilationCfm: 60,
  storeys: 1,
  shelterClass: 4,
};

import { type MoistAir, moistAir } from "@/lib/engineering/air";
import { type CoilTemperatureHeldSystem, coilFromRating } from "@/lib/engineering/equipment";

export const SEA_LEVEL_PSIA = 14.696;

/** Indoor air of the trade's cooling rating, 80 °F dry bulb and 67 °F wet bulb. */
export const RATING_AIR: MoistAir = moistAir({ dryBulbF: 80, wetBulbF: 67, pressurePsia: SEA_LEVEL_PSIA });

/** Three tons at 0.75 sensible ratio and 1,200 cfm. */
export const THREE_TON_COIL = coilFromRating({
  entering: RATING_AIR,
  airflowCfm: 1_200,
  totalBtuh: 36_000,
  sensibleRatio: 0.75,
});

/** The three-ton coil with the refrigerant at 45 °F at its rated point: approach 10.4 °F. */
export const SYSTEM: CoilTemperatureHeldSystem = {
  a0LbPerH: THREE_TON_COIL.a0LbPerH,
  approach: {
    kind: "grows with capacity",
    ratedApproachF: THREE_TON_COIL.adpF - 45,
    ratedTotalBtuh: 36_000,
  },
  heldTemperatureF: 45,
  capacityCeilingBtuh: 36_000,
  minimumCapacityBtuh: 9_000,
  frostLimitF: 32,
};

export function indoorAir(dryBulbF: number, relativeHumidityPct: number): MoistAir {
  return moistAir({ dryBulbF, relativeHumidityPct, pressurePsia: SEA_LEVEL_PSIA });
}

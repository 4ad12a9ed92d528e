import type { PerformanceRow } from "@/lib/domain/catalog";

/** The rating point an invented table is built around: 95 °F outdoors, 80 °F dry bulb and 67 °F wet bulb indoors. */
export type RatedPoint = {
  readonly capacitySetting: string;
  readonly totalBtuh: number;
  readonly airflowCfm: number;
  readonly powerW: number;
};

const OUTDOOR_F = [75, 85, 95, 105, 115] as const;
const WET_BULB_F = [59, 63, 67, 71] as const;
const DRY_BULB_F = [75, 80] as const;

/**
 * An invented cooling table by plain straight lines, taken from no maker:
 * total falls 0.6 % a °F outdoors, rises 1.8 % a °F of wet bulb and 0.2 % a percent of airflow;
 * the sensible ratio is 0.76 at the rating point, 0.03 higher a °F of wet-bulb depression, 0.22 higher at twice the airflow;
 * power rises 1.1 % a °F outdoors. Sensible never exceeds the total.
 */
export function inventedCooling(
  rated: RatedPoint,
  airflowsCfm: readonly number[],
): readonly PerformanceRow[] {
  return OUTDOOR_F.flatMap((outdoorDbF) =>
    WET_BULB_F.flatMap((enteringWbF) =>
      DRY_BULB_F.flatMap((enteringDbF) =>
        airflowsCfm.map((airflowCfm): PerformanceRow => {
          const moreAirflow = airflowCfm / rated.airflowCfm - 1;
          const total =
            rated.totalBtuh *
            (1 - 0.006 * (outdoorDbF - 95)) *
            (1 + 0.018 * (enteringWbF - 67)) *
            (1 + 0.2 * moreAirflow);
          const depression = enteringDbF - enteringWbF;
          const ratio = Math.min(1, 0.76 + 0.03 * (depression - 13) + 0.22 * moreAirflow);
          const totalBtuh = Math.round(total / 50) * 50;
          return {
            capacitySetting: rated.capacitySetting,
            mode: "cooling",
            outdoorDbF,
            enteringWbF,
            enteringDbF,
            airflowCfm,
            totalBtuh,
            sensibleBtuh: Math.min(totalBtuh, Math.round((total * ratio) / 50) * 50),
            powerW: Math.round(rated.powerW * (1 + 0.011 * (outdoorDbF - 95))),
          };
        }),
      ),
    ),
  );
}

/** The two heating points a balance point is drawn through. */
export function inventedHeating(
  capacitySetting: string,
  airflowCfm: number,
  at47: { readonly btuh: number; readonly powerW: number },
  at17: { readonly btuh: number; readonly powerW: number },
): readonly PerformanceRow[] {
  return [[47, at47] as const, [17, at17] as const].map(
    ([outdoorDbF, { btuh, powerW }]): PerformanceRow => ({
      capacitySetting,
      mode: "heating",
      outdoorDbF,
      enteringWbF: null,
      enteringDbF: 70,
      airflowCfm,
      totalBtuh: btuh,
      sensibleBtuh: null,
      powerW,
    }),
  );
}

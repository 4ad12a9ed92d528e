import type { LoggedHouse } from "./house-log";

const WHEN = { firstDay: "2026-08-10", days: 14, zone: "America/Chicago" } as const;

/** 2,300 ft², low airflow, long runs, fan off between calls: dry but for a few mild wet hours. */
export const DRY_HOUSE: LoggedHouse = {
  ...WHEN,
  setpointF: 75,
  firstStageStartOffsetF: 1,
  secondStageStartOffsetF: 2,
  minimumRunMin: 10,
  fanBetweenCalls: false,
  stages: [
    { sensibleBtuh: 19_300, moistureLbPerH: 6.6 },
    { sensibleBtuh: 22_300, moistureLbPerH: 6.9 },
  ],
  lossBtuhPerF: 420,
  internalBtuh: 4_600,
  solarAreaFt2: 46,
  capacitanceBtuPerF: 3_450,
  outdoorAirCfm: 78,
  peopleLbPerH: 0.8,
  moistureStoreLb: 12_000,
};

/** 2,000 ft², one oversized speed at high airflow, short runs, fan always on: wet. */
export const HUMID_HOUSE: LoggedHouse = {
  ...WHEN,
  setpointF: 74,
  firstStageStartOffsetF: 0.5,
  secondStageStartOffsetF: 0.5,
  minimumRunMin: 5,
  fanBetweenCalls: true,
  stages: [{ sensibleBtuh: 20_800, moistureLbPerH: 4.9 }],
  lossBtuhPerF: 390,
  internalBtuh: 3_900,
  solarAreaFt2: 28,
  capacitanceBtuPerF: 3_000,
  outdoorAirCfm: 85,
  peopleLbPerH: 0.9,
  moistureStoreLb: 10_500,
};

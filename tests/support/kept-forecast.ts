import { type KeptForecastWhole, NO_CHANGES } from "@/lib/domain/forecast";
import type { LivedInForce } from "@/lib/domain/forecast-lived/kept";
import { type ForecastRange, RANGED_FIGURES, type RangedFigure } from "@/lib/engineering/simulation";

const range = (central: number, low: number, high: number): ForecastRange => ({ central, low, high });

/** Hours above the limit by month: 248 in all, 86 to 410. */
const MONTHS = [
  [4, 1, 9],
  [7, 2, 14],
  [16, 6, 27],
  [26, 9, 41],
  [31, 11, 52],
  [14, 4, 22],
  [6, 1, 11],
  [8, 2, 13],
  [33, 12, 49],
  [58, 22, 94],
  [34, 13, 57],
  [11, 3, 21],
] as const;

const RANGES: Partial<Readonly<Record<RangedFigure, ForecastRange>>> = {
  dryHours: range(8_512, 8_350, 8_674),
  hoursAboveLimit: range(248, 86, 410),
  starts: range(6_120, 5_480, 6_932),
  firstStageHours: range(2_214, 1_987, 2_602),
  secondStageHours: range(388, 301, 517),
};

/** A forecast as it would be kept with a job; every number invented. */
export const KEPT_FORECAST = {
  id: "00000000-0000-4000-8000-000000000001",
  optionLabel: "2 tons, less airflow",
  weatherFileId: "00000000-0000-4000-8000-000000000002",
  weatherName: "Invented Bay",
  engineVersion: "1",
  inputsHash: "0f".repeat(32),
  seed: 1,
  members: 10,
  humidityLimitPct: 55,
  // Only what the records are judged with is read of it here.
  inputs: { changed: NO_CHANGES, humidityLimitPct: 55 } as KeptForecastWhole["inputs"],
  keptAt: "2026-07-01T12:00:00.000Z",
  keptByName: "Dewey Okonjo-Hale",
  supersededAt: null,
  figures: {
    membersRun: 10,
    refused: [],
    ranges: Object.fromEntries(
      RANGED_FIGURES.map((figure) => [figure, RANGES[figure] ?? range(0, 0, 0)]),
    ) as KeptForecastWhole["figures"]["ranges"],
    hoursAboveLimitByMonth: MONTHS.map(([central, low, high]) => range(central, low, high)),
    worstWeekHours: range(41, 18, 66),
    secondStageShare: range(0.15, 0.11, 0.2),
    meanRunMin: range(25.5, 22.1, 28.9),
    kwh: range(3_140, 2_870, 3_655),
    balanceError: 0.0001,
  },
  result: {
    houseAssumptions: [
      {
        name: "airChangesAt50Pa",
        value: 7,
        unit: "1/h",
        why: "not measured; common practice, no source",
        low: 3,
        high: 12,
      },
      { name: "occupants", value: 4, unit: "people", why: "load summary", low: 4, high: 4 },
    ],
    systemAssumptions: [
      {
        name: "startTimeConstantS",
        label: "Time constant of a start",
        value: 45,
        unit: "s",
        why: "Henderson & Rengarajan 1996",
      },
    ],
    uncertain: [],
  } as unknown as KeptForecastWhole["result"],
} satisfies KeptForecastWhole;

/** The same forecast held against an invented log of two months. */
export const LIVED: LivedInForce = {
  importId: "00000000-0000-4000-8000-000000000003",
  humidityLimitPct: 55,
  weather: "the log's own",
  weatherName: "Invented Bay",
  firstAt: "2026-08-01T00:00:00.000Z",
  lastAt: "2026-09-30T00:00:00.000Z",
  hours: 1_440,
  members: 10,
  lived: { hoursAboveLimit: 97, meanRhPct: 52.4, runHours: 611 },
  forecast: {
    hoursAboveLimit: range(44, 14, 68),
    meanRhPct: range(51.2, 49.8, 52.9),
    runHours: range(590, 534, 671),
  },
  fitted: {
    hoursAboveLimit: range(91, 80, 103),
    meanRhPct: range(52.2, 51.8, 52.6),
    runHours: range(604, 588, 622),
  },
  months: [
    { month: "2026-08", hours: 744, lived: 31, forecast: range(12, 4, 21), fitted: range(29, 24, 35) },
    { month: "2026-09", hours: 696, lived: 66, forecast: range(32, 10, 47), fitted: range(62, 56, 68) },
  ],
  assumptions: [
    {
      name: "airChangesAt50Pa",
      unit: "1/h",
      low: 3,
      value: 7,
      high: 12,
      hoursAtLow: 21,
      hoursAtHigh: 95,
    },
  ],
  year: null,
  fit: null,
  fitNotes: [],
  heldAt: "2026-10-01T12:00:00.000Z",
  heldByName: "Dewey Okonjo-Hale",
  outdated: false,
};

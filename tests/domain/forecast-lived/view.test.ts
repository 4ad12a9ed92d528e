import { expect, it } from "vitest";
import type { LivedSummary } from "@/lib/domain/forecast-lived/kept";
import { forecastLivedPaper } from "@/lib/domain/forecast-lived/view";

const range = (central: number) => ({ central, low: central - 20, high: central + 20.4 });
const LIVED: LivedSummary = {
  importId: "log",
  humidityLimitPct: 60,
  weather: "the log's own",
  weatherName: "coast",
  firstAt: "2026-08-01T05:00:00.000Z",
  lastAt: "2026-08-29T05:00:00.000Z",
  hours: 1_672,
  members: 10,
  lived: { hoursAboveLimit: 1_080.4, meanRhPct: 58.26, runHours: null },
  forecast: { hoursAboveLimit: range(60), meanRhPct: range(55), runHours: null },
  fitted: null,
  months: [],
  assumptions: [
    { name: "airChangesAt50Pa", unit: "1/h", low: 3, value: 7, high: 12, hoursAtLow: 20, hoursAtHigh: 400 },
  ],
  year: null,
  fit: null,
  fitNotes: [],
};

it("says lived and forecast in texts, and the assumption that carries the difference", () => {
  const paper = forecastLivedPaper(LIVED);
  expect(paper.lead).toBe("1,672 h compared, hour against hour, in the log’s own weather.");
  expect(paper.rows).toEqual([
    { label: "Above 60 %", lived: "1,080 h", forecast: "60 h (40 to 80)", fitted: "–" },
    { label: "Mean humidity", lived: "58.3 %", forecast: "55.0 % (35.0 to 75.4)", fitted: "–" },
  ]);
  expect(paper.explanations).toEqual([
    "Of the assumptions “Leakage, air changes at 50 Pa” carries it most: with 12 1/h instead of 7 it would have been 400 h instead of 60 h.",
  ]);
});

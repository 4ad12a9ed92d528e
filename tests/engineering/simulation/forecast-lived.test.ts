import { describe, expect, it } from "vitest";
import {
  type ForecastLivedReadings,
  forecastLivedFinding,
} from "@/lib/engineering/simulation/forecast-lived";

const SOURCE =
  "the rule's own comparison by hand: 672 h, 5 % of them are 33.6 h (company limit, common practice)";

const LIMITS = { "simulation.livedMarginPct": 5 };
const READINGS: ForecastLivedReadings = {
  humidityLimitPct: 60,
  hours: 672,
  livedHoursAbove: 80,
  forecastHoursAbove: { central: 60, low: 40, high: 100 },
  ownWeather: true,
  explanations: ["The house is leakier than assumed: 2.00 times (1.50 to 2.60)."],
  outdated: false,
};

describe(`forecast and lived, against ${SOURCE}`, () => {
  it.each([
    [80, "meets", /within what was forecast: 40 to 100 h in the log’s own weather\.$/],
    [133.6, "meets", /within what was forecast/],
    [
      133.7,
      "falls short",
      /wetter than forecast: 40 to 100 h in the log’s own weather\. The house is leakier/,
    ],
    [6.4, "meets", /within what was forecast/],
    [6.3, "meets", /drier than forecast/],
  ] as const)("%s h lived: %s", (livedHoursAbove, verdict, said) => {
    const found = forecastLivedFinding({ ...READINGS, livedHoursAbove }, LIMITS);
    expect(found.verdict).toBe(verdict);
    expect(found.statement).toMatch(said);
  });

  it("says when the weather was a typical year's, and when the records have changed", () => {
    const { statement } = forecastLivedFinding({ ...READINGS, ownWeather: false, outdated: true }, LIMITS);
    expect(statement).toMatch(/typical year’s weather/);
    expect(statement).toMatch(/records have changed since/);
  });

  it("without a known explanation it says none", () => {
    const { statement, nextStep } = forecastLivedFinding(
      { ...READINGS, livedHoursAbove: 400, explanations: [] },
      LIMITS,
    );
    expect(statement).toMatch(/weather\.$/);
    expect(nextStep).toMatch(/blower door/);
  });

  it("refuses what cannot be", () => {
    expect(() => forecastLivedFinding({ ...READINGS, livedHoursAbove: 700 }, LIMITS)).toThrow(
      /livedHoursAbove/,
    );
    expect(() => forecastLivedFinding({ ...READINGS, hours: Number.NaN }, LIMITS)).toThrow(/hours/);
    const crossed = { central: 60, low: 100, high: 40 };
    expect(() => forecastLivedFinding({ ...READINGS, forecastHoursAbove: crossed }, LIMITS)).toThrow(/high/);
  });
});

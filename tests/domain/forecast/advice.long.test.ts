import { describe, expect, it } from "vitest";
import { forecastAdvice } from "@/lib/domain/forecast";
import {
  type ForecastOption,
  forecastYears,
  gatherForecast,
  prepareForecast,
} from "@/lib/engineering/simulation";
import { BASE, HOUSE, SETTINGS, steadyWeather } from "../../engineering/simulation/fixtures";

/** Three weeks: a hot one, then two mild and wet ones. */
function weeks() {
  const weather = steadyWeather(504, 70, 0.0145);
  weather.dryBulbF.fill(90, 0, 168);
  return weather;
}
const { system, controls, ventilation, dehumidifier } = BASE;
const off: ForecastOption = { name: "fan off", system, controls, ventilation, dehumidifier };
const on: ForecastOption = {
  ...off,
  name: "fan on",
  controls: { ...controls, settings: { ...SETTINGS, fanBetweenCalls: "on" } },
};
const dryer: ForecastOption = {
  ...off,
  name: "dehumidifier",
  dehumidifier: {
    ratedPintsPerDay: 120,
    ratedDbF: 73,
    ratedRhPct: 60,
    powerW: 700,
    startAbovePct: 57,
    stopBelowPct: 53,
  },
};

function run(options: readonly ForecastOption[], years = Number.POSITIVE_INFINITY) {
  const prepared = prepareForecast({
    house: { kind: "given", house: HOUSE },
    weather: weeks(),
    options,
    humidityLimitPct: 60,
    members: 2,
    seed: 3,
  });
  return gatherForecast(prepared, [...forecastYears(prepared)].slice(0, years));
}

describe("advice on a forecast", () => {
  it("takes the driest and says what makes it so", () => {
    const forecast = run([off, on, dryer]);
    const said = forecastAdvice(forecast, 60);
    expect(said.option).toBe(2);
    expect(said.advice).toMatch(/^Take “dehumidifier”: about [\d,]+ hours of the year above 60 %/);
    expect(said.reasons[0]).toMatch(/“fan off” leaves .* the dehumidifier takes out [\d,]+ pints more/);
    const left = Math.round(forecast.options[0]?.ranges.hoursAboveLimit.central ?? -1);
    expect(said.reasons[0]).toContain(`leaves ${left} hours`);
  });

  it("without one, says that mild wet weeks are out of cooling's reach", () => {
    const said = forecastAdvice(run([off]), 60);
    expect(said.reasons.join(" ")).toMatch(
      /In the mild wet week \d+ of 168 hours .* no cooling setting reaches them/,
    );
  });

  it("among equally dry ones takes the least electricity, whatever their order", () => {
    const costly = { ...off, name: "costly fan", system: { ...system, wattsPerBtuhAt95F: 0.2 } };
    expect(forecastAdvice(run([costly, off]), 60).option).toBe(1);
    expect(forecastAdvice(run([off, costly]), 60).option).toBe(0);
    expect(forecastAdvice(run([costly, off]), 60).reasons[0]).toMatch(/is as dry/);
  });

  it("says when it is not finished, and that nothing has run", () => {
    expect(forecastAdvice(run([off, on], 2), 60).advice).toMatch(/not all years/);
    expect(forecastAdvice(run([off], 0), 60)).toEqual({
      option: null,
      advice: "No year has been run yet.",
      reasons: [],
    });
  });
});

import { describe, expect, it } from "vitest";
import { forecastAdvice } from "@/lib/domain/forecast";
import {
  type ForecastOption,
  forecastYears,
  gatherForecast,
  prepareForecast,
} from "@/lib/engineering/simulation";
import { BASE, HOUSE, SETTINGS, SYSTEM, stageAt, steadyWeather } from "../../engineering/simulation/fixtures";

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

/** Two hot weeks in which the rooms stand above 52 % while they are cooled to 75 °F. */
const HOT = { weather: steadyWeather(336, 90, 0.0155), humidityLimitPct: 52 };
const PROMISE = { humidityLimitPct: 60, dryShareMinPct: 50 };

function run(
  options: readonly ForecastOption[],
  years = Number.POSITIVE_INFINITY,
  { weather, humidityLimitPct } = { weather: weeks(), humidityLimitPct: 60 },
) {
  const prepared = prepareForecast({
    house: { kind: "given", house: HOUSE },
    weather,
    options,
    humidityLimitPct,
    members: 2,
    seed: 3,
  });
  return gatherForecast(prepared, [...forecastYears(prepared)].slice(0, years));
}

describe("advice on a forecast", () => {
  it("takes the driest and says what makes it so", () => {
    const forecast = run([off, on, dryer]);
    const said = forecastAdvice(forecast, PROMISE);
    expect(said.option).toBe(2);
    expect(said.advice).toMatch(/^Take “dehumidifier”: about [\d,]+ hours of the year above 60 %/);
    expect(said.reasons[0]).toMatch(/“fan off” leaves .* the dehumidifier takes out [\d,]+ pints more/);
    const left = Math.round(forecast.options[0]?.ranges.hoursAboveLimit.central ?? -1);
    expect(said.reasons[0]).toContain(`leaves ${left} hours`);
  });

  it("without one, says that mild wet weeks are out of cooling's reach", () => {
    const said = forecastAdvice(run([off]), PROMISE);
    expect(said.reasons.join(" ")).toMatch(
      /In the mild wet week \d+ of 168 hours .* no cooling setting reaches them/,
    );
  });

  it("among equally dry ones takes the least electricity, whatever their order", () => {
    const costly = { ...off, name: "costly fan", system: { ...system, wattsPerBtuhAt95F: 0.2 } };
    expect(forecastAdvice(run([costly, off]), PROMISE).option).toBe(1);
    expect(forecastAdvice(run([off, costly]), PROMISE).option).toBe(0);
    expect(forecastAdvice(run([costly, off]), PROMISE).reasons[0]).toMatch(/is as dry/);
  });

  it("does not take a house for dry that nobody cools", () => {
    // 10,000 Btu/h, a third of it latent, against some 9,000 sensible at 90 °F: the rooms drift up, and warm air is of lower relative humidity.
    const small: ForecastOption = {
      ...off,
      name: "too small",
      system: {
        ...SYSTEM,
        ceiling: SYSTEM.ceiling.map((one) => ({ ...one, capacityBtuh: 10_000 })),
        stages: [{ ...stageAt(300, 100), minimumCapacityBtuh: 3_000 }],
      },
    };
    const promise = { humidityLimitPct: 52, dryShareMinPct: 5 };
    const forecast = run([small, off], 2, HOT);
    const [warm, cool] = forecast.options.map((one) => one?.ranges);
    expect(warm?.hoursAboveLimit.central).toBeLessThan((cool?.hoursAboveLimit.central ?? 0) - 50);
    expect(warm?.aboveSetpointDegreeHours.central).toBeGreaterThan(500);
    const said = forecastAdvice(forecast, promise);
    expect(said.option).toBe(1);
    expect(said.reasons[0]).toMatch(
      /“too small” leaves \d+ hours, [\d,]+ less, but does not hold the temperature: [\d,]+ degree-hours \(°F·h\) warmer than the start of cooling over the year, 8\d\.\d °F at the hottest/,
    );
    const alone = forecastAdvice(run([small], 2, HOT), promise);
    expect(alone.advice).toMatch(/^“too small” does not keep the house as cool as asked: about/);
    expect(alone.reasons.join(" ")).toMatch(/It is [\d,]+ degree-hours \(°F·h\) warmer/);
  });

  it("says when dryness is bought with rooms below the setpoint", () => {
    const settings = { ...SETTINGS, coolingPastSetpointF: 3 };
    const past = { ...off, name: "past", controls: { ...controls, settings, dryAbovePct: 30 } };
    const { reasons } = forecastAdvice(run([past], 2, HOT), PROMISE);
    expect(reasons.join(" ")).toMatch(
      /Its runs go [\d,]+ degree-hours \(°F·h\) below the setpoint, down to 7[12]\.\d °F/,
    );
    expect(forecastAdvice(run([off], 2, HOT), PROMISE).reasons.join(" ")).not.toMatch(/below the setpoint/);
  });

  it("says so when none keeps the promise", () => {
    const strict = { humidityLimitPct: 60, dryShareMinPct: 99 };
    expect(forecastAdvice(run([off, on]), strict).advice).toMatch(
      /^None of these keeps the house at or below 60 % for 99 % of the year\. “fan off” comes nearest: about \d+ hours/,
    );
    expect(forecastAdvice(run([off]), strict).advice).toMatch(
      /^“fan off” does not keep the house at or below/,
    );
  });

  it("names the warmer rooms where they, and not the water, make the difference", () => {
    const warmer = { ...off, name: "79 °F", controls: { ...controls, coolingSetpointF: 79 } };
    const said = forecastAdvice(run([off, warmer], 4, HOT), { humidityLimitPct: 52, dryShareMinPct: 5 });
    expect(said.option).toBe(1);
    expect(said.reasons[0]).toMatch(/its rooms are [1-4]\.\d °F warmer on average/);
  });

  it("says when it is not finished, and that nothing has run", () => {
    expect(forecastAdvice(run([off, on], 2), PROMISE).advice).toMatch(/not all years/);
    expect(forecastAdvice(run([off], 0), PROMISE)).toEqual({
      option: null,
      advice: "No year has been run yet.",
      reasons: [],
    });
  });
});

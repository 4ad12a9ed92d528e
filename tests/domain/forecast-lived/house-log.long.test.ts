import { describe, expect, it } from "vitest";
import { FITS, fitToLog } from "@/lib/domain/forecast-lived/fit-to-log";
import { factorWord, fitSentences } from "@/lib/domain/forecast-lived/fit-words";
import { houseLogOf } from "@/lib/domain/forecast-lived/house-log";
import { hourOfYear, logWeather } from "@/lib/domain/forecast-lived/log-weather";
import type { LogSamples } from "@/lib/engineering/logs";
import { FIT_FACTORS, houseWithFactors, type UncertainNumber } from "@/lib/engineering/simulation";
import { emptyTotals, firstState } from "@/lib/engineering/simulation/simulate-year";
import { runHours } from "@/lib/engineering/simulation/year-loop";
import { SUM } from "@/lib/engineering/simulation/year-numbers";
import { yearPlan } from "@/lib/engineering/simulation/year-plan";
import { BASE, HOUSE } from "../../engineering/simulation/fixtures";
import { simulatedSamples } from "./simulated-samples";

const SOURCE =
  "the account of the year's own loop for the same days (computed); calendar arithmetic by hand; a house whose factors are known (computed)";

const WHEN = { firstDay: "2026-07-27", days: 21, zone: "America/Chicago" };
const AS_ASSUMED = simulatedSamples(BASE, WHEN);
const ONES = { conductance: 1, leakage: 1, gains: 1, moisture: 1, buffer: 1 };

function without(...names: readonly (keyof LogSamples["channels"])[]): LogSamples {
  const kept = Object.entries(AS_ASSUMED.channels).filter(([name]) => !names.some((one) => one === name));
  return { ...AS_ASSUMED, channels: Object.fromEntries(kept) };
}

function logOf(samples: LogSamples) {
  const answer = houseLogOf(samples, BASE, 30);
  if (!answer.ok) throw new Error(answer.missing.join(" "));
  return answer;
}

describe(`a log as a house's log, against ${SOURCE}`, () => {
  const { log, timeMs, notes } = logOf(AS_ASSUMED);

  it("takes what the system took: heat and water of three weeks within 2 % of the loop's own account", () => {
    const plan = yearPlan(BASE);
    const first = hourOfYear(timeMs[0] ?? 0, BASE.weather);
    const state = firstState(plan);
    runHours(plan, state, first - 336, first, emptyTotals(plan, null));
    const totals = emptyTotals(plan, null);
    runHours(plan, state, first, first + 21 * 24, totals);
    const of = (place: number) => totals.sums[place] ?? 0;
    const sum = (column: Float64Array) => column.reduce((total, one) => total + one / 12, 0);
    expect(log.indoorF.length).toBe(21 * 288);
    const taken = of(SUM.coilLb) - of(SUM.evaporatedLb);
    expect(Math.abs(sum(log.driedLbPerH) / taken - 1)).toBeLessThan(0.02);
    const cooled = of(SUM.coilSensibleBtu) - of(SUM.coilEvaporationBtu) - of(SUM.fanBtu);
    expect(Math.abs(sum(log.cooledBtuh) / cooled - 1)).toBeLessThan(0.02);
  });

  it("keeps the house's clock, and says what is not in a log", () => {
    expect(log.clockHour[0]).toBe(0);
    expect(log.clockHour[12 * 13]).toBe(13);
    expect(log.startsAnew.reduce((count, one) => count + one, 0)).toBe(1);
    expect(notes).toEqual([expect.stringContaining("Wind and sun")]);
    expect(logOf(without("fanShare")).notes[1]).toMatch(/when the fan ran/);
  });

  it.each([
    [
      ["outdoorF", "outdoorRhPct"],
      [/no outdoor temperature/, /no outdoor humidity/],
    ],
    [["firstStageShare"], [/how long the cooling stages ran/]],
    [["indoorRhPct"], [/no indoor humidity/]],
  ] as const)("without %s it says what is missing", (names, said) => {
    const answer = houseLogOf(without(...names), BASE, 30);
    expect(answer).toEqual({ ok: false, missing: said.map((one) => expect.stringMatching(one)) });
  });

  it("begins anew after a gap", () => {
    const cut = (column: Float64Array) =>
      Float64Array.from(column, (one, place) => (place === 600 ? Number.NaN : one));
    const { indoorRhPct = new Float64Array() } = AS_ASSUMED.channels;
    const gap = logOf({ ...AS_ASSUMED, channels: { ...AS_ASSUMED.channels, indoorRhPct: cut(indoorRhPct) } });
    expect(gap.log.indoorF.length).toBe(21 * 288 - 1);
    expect(gap.log.startsAnew[600]).toBe(1);
  });
});

describe("the log's weather in the file's year", () => {
  it("hours of the year by the file's standard clock", () => {
    // Central standard time is UTC − 6: 27 July, midnight of daylight time is 23:00 of the 26th; 206 days have passed by then.
    expect(hourOfYear(Date.UTC(2026, 6, 27, 5), BASE.weather)).toBe(206 * 24 + 23);
    expect(hourOfYear(Date.UTC(2028, 1, 29, 18), BASE.weather)).toBe(58 * 24 + 12);
  });

  it("outdoors are the log's, light is usual, other months are the file's", () => {
    const warmer = { ...AS_ASSUMED.channels, outdoorF: AS_ASSUMED.channels.outdoorF?.map((one) => one + 3) };
    const found = logWeather(
      { ...AS_ASSUMED, channels: { ...AS_ASSUMED.channels, ...warmer } as LogSamples["channels"] },
      BASE.weather,
      30,
    );
    const noon = 210 * 24 + 12;
    expect((found?.weather.dryBulbF[noon] ?? 0) - (BASE.weather.dryBulbF[noon] ?? 0)).toBeCloseTo(3, 0);
    expect(found?.weather.dryBulbF[0]).toBe(BASE.weather.dryBulbF[0]);
    expect(found?.hours).toBe(21 * 24);
    expect(found?.own.reduce((sum, one) => sum + one, 0)).toBe(21 * 24);
    const light = (weather: typeof BASE.weather | undefined) => {
      const month = weather?.globalHorizontalBtuhPerFt2.slice(207 * 24, 226 * 24) ?? [];
      return Array.from(month).reduce((sum, one) => sum + one, 0);
    };
    expect(Math.abs(light(found?.weather) / light(BASE.weather) - 1)).toBeLessThan(0.1);
  });
});

describe("the fit", () => {
  const fitted = (leakage: number) => {
    const house = houseWithFactors(HOUSE, { ...ONES, leakage });
    const { log } = logOf(simulatedSamples({ ...BASE, house }, WHEN));
    const steps = fitToLog(HOUSE, log);
    let done = 0;
    for (let step = steps.next(); ; step = steps.next()) {
      if (step.done) return { fit: step.value, done };
      done = step.value;
    }
  };

  const within = (uncertain: readonly UncertainNumber[], name: string, truth: number) => {
    const one = uncertain.find((factor) => factor.name === name);
    expect(one?.low, name).toBeLessThanOrEqual(truth);
    expect(one?.high, name).toBeGreaterThanOrEqual(truth);
  };

  it("a house twice as leaky is said to be leakier, with the truth in every range", () => {
    const { fit, done } = fitted(2);
    expect(done).toBe(FITS);
    for (const name of FIT_FACTORS) within(fit.uncertain, name, name === "leakage" ? 2 : 1);
    expect(factorWord(fit, "leakage")).toBe("more");
    expect(fit.heldOut.grainsPerLb).toBeLessThan(fit.heldOutBefore.grainsPerLb / 2);
    expect(fitSentences(fit)).toEqual([
      expect.stringMatching(/^The house is leakier than assumed: \d\.\d\d times/),
    ]);
  });

  it("a house as assumed is said to agree", () => {
    const { fit } = fitted(1);
    for (const name of FIT_FACTORS) within(fit.uncertain, name, 1);
    expect(fitSentences(fit)).toEqual([expect.stringMatching(/agrees with the house as assumed/)]);
  });
});

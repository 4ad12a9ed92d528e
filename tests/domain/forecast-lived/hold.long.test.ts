import { describe, expect, it } from "vitest";
import { explanations } from "@/lib/domain/forecast-lived/explain";
import { type HoldInput, holdAgainstLog } from "@/lib/domain/forecast-lived/hold";
import type { ForecastLived } from "@/lib/domain/forecast-lived/kept";
import type { LogSamples } from "@/lib/engineering/logs";
import { houseFromLoadSummary, houseWithFactors } from "@/lib/engineering/simulation";
import { BASE, COASTAL } from "../../engineering/simulation/fixtures";
import { LOAD } from "../../engineering/simulation/load-of-a-house";
import { simulatedSamples } from "./simulated-samples";

const SOURCE = "a house whose leakage is known, run through the year's own loop in the same hours (computed)";

const HOUSE = houseFromLoadSummary(LOAD, COASTAL).house;
const ONES = { conductance: 1, leakage: 1, gains: 1, moisture: 1, buffer: 1 };
const { system, controls, ventilation, dehumidifier } = BASE;

function samplesOf(leakage: number, days: number): LogSamples {
  const house = houseWithFactors(HOUSE, { ...ONES, leakage });
  return simulatedSamples({ ...BASE, house }, { firstDay: "2026-05-11", days, zone: "America/Chicago" });
}

function held(samples: LogSamples): { readonly lived: ForecastLived; readonly seen: readonly string[] } {
  const input: HoldInput = {
    importId: "log",
    samples,
    elevationFt: 30,
    house: { kind: "load summary", load: LOAD, changed: {} },
    option: { name: "as set", system, controls, ventilation, dehumidifier },
    weather: COASTAL,
    weatherName: "coastal",
    humidityLimitPct: 60,
  };
  const steps = holdAgainstLog(input);
  const seen: string[] = [];
  for (let step = steps.next(); ; step = steps.next()) {
    if (step.done) return { lived: step.value, seen };
    seen.push(`${step.value.done} of ${step.value.total}`);
  }
}

describe(`a forecast held against a log: ${SOURCE}`, () => {
  it("a house three times as leaky lies beyond the forecast, and the fitted one explains it", () => {
    const { lived: found, seen } = held(samplesOf(3, 21));
    const lived = found.lived.hoursAboveLimit;
    const { forecast, fitted, year } = found;
    if (fitted === null || year === null) throw new Error(found.fitNotes.join(" "));
    expect(found.weather).toBe("the log's own");
    expect(found.hours).toBe(21 * 24);
    expect(lived).toBeGreaterThan(forecast.hoursAboveLimit.high + 20);
    expect(fitted.hoursAboveLimit.low).toBeLessThan(lived);
    expect(fitted.hoursAboveLimit.high).toBeGreaterThan(lived);
    const off = (central: number) => Math.abs(central - lived);
    expect(off(fitted.hoursAboveLimit.central)).toBeLessThan(off(forecast.hoursAboveLimit.central) / 3);
    expect(year.fitted.central).toBeGreaterThan(year.assumed.central + 500);
    expect(explanations(found)[0]).toMatch(/^The house is leakier than assumed: /);
    expect(found.months.map(({ month }) => month)).toEqual(["2026-05"]);
    expect(found.months[0]?.lived).toBeCloseTo(lived, 6);
    expect(found.months[0]?.forecast).toEqual(forecast.hoursAboveLimit);
    expect(seen[0]).toBe("1 of 41");
    expect(seen.at(-1)).toBe("41 of 41");
    expect(found.picture?.measuredF.length).toBe(21 * 24);
  });

  it("a house as assumed behaves as forecast, and more leakage is wetter", () => {
    const { lived: found } = held(samplesOf(1, 14));
    const { low, high } = found.forecast.hoursAboveLimit;
    expect(found.lived.hoursAboveLimit).toBeGreaterThanOrEqual(low);
    expect(found.lived.hoursAboveLimit).toBeLessThanOrEqual(high);
    const leakage = found.assumptions.find(({ name }) => name === "airChangesAt50Pa");
    expect(leakage?.hoursAtHigh).toBeGreaterThan(leakage?.hoursAtLow ?? Number.POSITIVE_INFINITY);
  });

  it("without outdoors the typical year stands in, nothing is fitted, and it says why", () => {
    const samples = samplesOf(1, 4);
    const { indoorF, indoorRhPct, firstStageShare } = samples.channels;
    const kept = { indoorF, indoorRhPct, firstStageShare } as LogSamples["channels"];
    const { lived: found } = held({ ...samples, channels: kept });
    expect(found.weather).toBe("typical year");
    expect(found.fit).toBeNull();
    expect(found.fitNotes[0]).toMatch(/no outdoor temperature/);
    expect(found.forecast.hoursAboveLimit.high).toBeGreaterThan(found.forecast.hoursAboveLimit.low);
  });

  it("a log too short for a fit is still held against the forecast", () => {
    const { lived: found } = held(samplesOf(1, 3));
    expect(found.hours).toBe(72);
    expect(found.fit).toBeNull();
    expect(found.fitNotes[0]).toMatch(/A fit needs 4 days/);
  });
});

import { describe, expect, it, vi } from "vitest";
import { type ForecastEvent, forecastEvents, jobSetup, optionSetup } from "@/lib/domain/forecast";
import {
  type ForecastInput,
  gatherForecast,
  type MemberYear,
  stableText,
} from "@/lib/engineering/simulation";
import { BASE, COASTAL, HOUSE, SYSTEM, stageAt, steadyWeather } from "../../engineering/simulation/fixtures";
import { FULL_JOB } from "../../support/full-job";

const weather = steadyWeather(24, 88, 0.016);
const { controls, ventilation } = BASE;
const option = (name: string, cfm: number) => ({
  name,
  system: { ...SYSTEM, stages: [stageAt(cfm, 100)] },
  controls,
  ventilation,
  dehumidifier: null,
});
const INPUT: ForecastInput = {
  house: { kind: "given", house: HOUSE },
  weather,
  options: [option("low", 700), option("high", 1_200)],
  humidityLimitPct: 60,
  members: 4,
  seed: 7,
};
const yearsOf = (events: readonly ForecastEvent[]): readonly MemberYear[] =>
  events.flatMap((event) => (event.kind === "year" ? [event.year] : []));
const whole = (input: ForecastInput, of: number) =>
  Array.from({ length: of }, (_, index) => [...forecastEvents(input, { index, of })]).flat();

describe("the loop of browser worker and server", () => {
  it("uses no function whose last digit an engine may round its own way, from the records to the years", () => {
    const inexact = ["exp", "expm1", "log", "log1p", "log2", "log10", "pow", "sin", "cos", "tan"] as const;
    const others = ["asin", "acos", "atan", "atan2", "sinh", "cosh", "tanh", "cbrt", "hypot"] as const;
    const spies = [...inexact, ...others].map((name) => ({ name, spy: vi.spyOn(Math, name) }));
    const house = jobSetup(FULL_JOB, {});
    const setup = optionSetup(FULL_JOB, "as designed", {});
    if (!house.ready || !setup.ready) throw new Error("The job of the tests lacks something.");
    const options = [setup.value.option];
    const events = whole({ ...house.value, options, weather: COASTAL, members: 2, seed: 1 }, 1);
    expect(yearsOf(events).map(({ figures }) => figures !== null)).toEqual([true, true]);
    const used = spies.filter(({ spy }) => spy.mock.calls.length > 0).map(({ name }) => name);
    vi.restoreAllMocks();
    expect(used).toEqual([]);
  });

  it("gives the same bytes however many workers share the years, and sent as JSON", () => {
    const texts = [1, 2, 3].map((of) =>
      stableText(gatherForecast({ input: INPUT, years: 8 }, yearsOf(whole(INPUT, of)))),
    );
    expect(new Set(texts).size).toBe(1);
    const sent = JSON.parse(JSON.stringify(yearsOf(whole(INPUT, 1)))) as readonly MemberYear[];
    expect(stableText(gatherForecast({ input: INPUT, years: 8 }, sent))).toBe(texts[0]);
  });

  it("says first what is uncertain, then every option with the central house", () => {
    const events = whole(INPUT, 1);
    expect(events[0]).toMatchObject({ kind: "ready", years: 8 });
    expect(yearsOf(events.slice(1, 3)).map(({ option: at, member }) => [at, member])).toEqual([
      [0, 0],
      [1, 0],
    ]);
  });

  it("goes on with the other options when one cannot be run, and says why", () => {
    const broken = {
      ...option("broken", 700),
      system: { ...SYSTEM, ceiling: [{ outdoorDbF: 65, capacityBtuh: 40_000 }] },
    };
    const events = whole({ ...INPUT, options: [broken, option("high", 1_200)] }, 1);
    const refused = events.filter((event) => event.kind === "refused");
    expect(refused).toHaveLength(1);
    expect(refused[0]).toMatchObject({ option: 0, problem: expect.stringMatching(/outdoor/i) });
    expect(yearsOf(events).map((year) => year.option)).toEqual([1, 1, 1, 1]);
  });

  it("fails in words when house and weather do not go together", () => {
    const wrong = whole({ ...INPUT, humidityLimitPct: 99 }, 1);
    expect(wrong).toEqual([{ kind: "failed", problem: expect.stringMatching(/humidityLimitPct/) }]);
  });
});

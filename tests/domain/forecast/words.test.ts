import { describe, expect, test } from "vitest";
import {
  dayOfYearText,
  humidityShares,
  namedApart,
  shortRunsPct,
  stageRuns,
  wettestMonths,
} from "@/lib/domain/forecast";
import type { OptionForecast } from "@/lib/engineering/simulation";

const SOURCE = "counted by hand (computed)";

/** An option of which only these are asked. */
function option({
  humidityHours = [],
  runsByMinute = [],
  wetHours = [],
}: {
  readonly humidityHours?: readonly number[];
  readonly runsByMinute?: readonly number[];
  readonly wetHours?: readonly number[];
}): OptionForecast {
  return {
    central: { humidityHours, runsByMinute },
    hoursAboveLimitByMonth: wetHours.map((central) => ({ central, low: 0, high: central })),
  } as unknown as OptionForecast;
}

describe(`a forecast in words: ${SOURCE}`, () => {
  test.each([
    [0, "1 Jan"],
    [31 * 24 - 1, "31 Jan"],
    [31 * 24, "1 Feb"],
    [59 * 24, "1 Mar"],
    [8_759, "31 Dec"],
    [8_783, "31 Dec"],
  ])("hour %i of the year lies on %s", (hour, day) => {
    expect(dayOfYearText(hour)).toBe(day);
  });

  test("the wettest months come first, those under an hour not at all", () => {
    const wetHours = [0, 0.4, 12, 0, 300.6, 0, 0, 0, 299, 80, 0, 0];
    expect(wettestMonths(option({ wetHours }), 3)).toEqual(["May 301 h", "Sep 299 h", "Oct 80 h"]);
    expect(wettestMonths(option({ wetHours: [0, 0.4] }), 3)).toEqual([]);
  });

  test("shares of humidity: a band begins with its first whole %, so 60.0 to 64.9 is one", () => {
    const humidityHours = Array.from({ length: 101 }, () => 0);
    for (const [pct, hours] of [
      [49, 10],
      [50, 20],
      [54, 5],
      [55, 15],
      [60, 25],
      [64, 5],
      [65, 15],
      [100, 5],
    ] as const)
      humidityHours[pct] = hours;
    expect(humidityShares(option({ humidityHours })).map(({ pct }) => pct)).toEqual([10, 25, 15, 30, 20]);
  });

  test("runs shorter than five minutes: 1 of 0, 2 of 4 of eight runs are 37.5 %; without a run there is no share", () => {
    expect(shortRunsPct(option({ runsByMinute: [1, 0, 0, 0, 2, 4, 1] }), 5)).toBe(37.5);
    expect(shortRunsPct(option({ runsByMinute: [0, 0, 0] }), 5)).toBeNull();
  });

  test("when each stage ran: a step from one to the other ends a bar, the last one lasts to the end", () => {
    expect(stageRuns([0, 1, 1, 2, 0, 0, 1])).toEqual([
      { fromMin: 1, toMin: 3, stage: "first stage" },
      { fromMin: 3, toMin: 4, stage: "second stage" },
      { fromMin: 6, toMin: 7, stage: "first stage" },
    ]);
    expect(stageRuns([2, 2])).toEqual([{ fromMin: 0, toMin: 2, stage: "second stage" }]);
  });

  test("equal names are told apart by their number", () => {
    expect(namedApart(["a", "b", "a", "a"])).toEqual(["a", "b", "a (2)", "a (3)"]);
  });
});

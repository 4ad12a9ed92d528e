import { describe, expect, test } from "vitest";
import { daysInWords, humidSince, type LivedDay } from "@/lib/domain/lived-days";

const day = (readings: readonly (readonly [minute: number, rh: number])[]): LivedDay => ({
  day: "2026-07-01",
  offsetMinutes: Float64Array.from(readings, ([minute]) => minute),
  indoorRhPct: Float64Array.from(readings, ([, rh]) => rh),
  indoorDbF: null,
  outdoorDbF: null,
  outdoorRhPct: null,
});

describe("hours above a limit", () => {
  test("each reading stands for the time to the next", () => {
    // 30 min at 70 %, 30 min at 50 %, then the last reading for the usual 30.
    expect(
      humidSince(
        [
          day([
            [0, 70],
            [30, 50],
            [60, 65],
          ]),
        ],
        60,
      ),
    ).toEqual({ hours: 1.5, hoursAbove: 1, dryPct: 100 * (1 - 60 / 90) });
  });
  test("a gap counts at most an hour, and a missing reading nothing", () => {
    const found = humidSince(
      [
        day([
          [0, 70],
          [600, Number.NaN],
          [605, 50],
        ]),
      ],
      60,
    );
    expect(found?.hoursAbove).toBe(1);
    expect(found?.hours).toBeCloseTo(1 + 5 / 60, 12);
  });
  test("exactly the limit is dry", () => {
    expect(
      humidSince(
        [
          day([
            [0, 60],
            [5, 60],
          ]),
        ],
        60,
      )?.dryPct,
    ).toBe(100);
  });
  test("without readings there is no answer", () => {
    expect(humidSince([], 60)).toBeNull();
    expect(humidSince([{ ...day([[0, 1]]), indoorRhPct: null }], 60)).toBeNull();
    expect(humidSince([day([[0, Number.NaN]])], 60)).toBeNull();
  });
});

test("a day is told by its means; what is not logged says so", () => {
  const logged = { ...day([[0, 62]]), outdoorDbF: Float64Array.of(80), outdoorRhPct: Float64Array.of(90) };
  expect(daysInWords([logged, { ...day([[0, 58]]), day: "2026-07-02" }])).toBe(
    "2026-07-01: outdoors 80 °F and 90 %, indoors 62 % on average; 2026-07-02: outdoors not logged, indoors 58 % on average",
  );
  expect(daysInWords([])).toBeNull();
});

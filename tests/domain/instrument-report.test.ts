import { describe, expect, test } from "vitest";
import type { Instrument } from "@/lib/domain/catalog";
import { asId } from "@/lib/domain/ids";
import { type Correction, instrumentReport } from "@/lib/domain/instrument-report";

const instrument = (id: string, calibrationDueOn: string | null = "2027-01-01"): Instrument => ({
  id: asId<"instrument">(id),
  name: `Instrument ${id}`,
  kind: "hygrometer",
  serialNumber: "",
  accuracy: [],
  calibratedOn: null,
  calibrationDueOn,
});
const TODAY = "2026-11-25";
const monthly = (change: number, wiggle: readonly number[]): Correction[] =>
  wiggle.map((noise, month) => ({
    instrumentId: "a",
    on: `2026-${String(month + 1).padStart(2, "0")}-10`,
    temperatureF: (change * month) / (wiggle.length - 1) + noise,
    humidityPct: null,
  }));
const QUIET = [0.1, -0.1, 0, 0.1, -0.1, 0, 0.1, -0.1];
const only = (corrections: readonly Correction[]) =>
  instrumentReport([instrument("a")], [], corrections, TODAY)[0];

test.each([
  ["2026-11-24", "overdue"],
  ["2026-11-25", "in date"],
  [null, "not recorded"],
] as const)("calibration due on %s is %s on that day", (due, state) => {
  expect(instrumentReport([instrument("a", due)], [], [], TODAY)[0]?.calibration).toBe(state);
});

describe("corrections over time", () => {
  test("that move by 2 °F over eight thermostats are a drift of the instrument", () => {
    const found = only(monthly(2, QUIET));
    expect(found?.temperature?.change?.over).toBeCloseTo(2, 0);
    expect(found?.words.join()).toContain("has drifted");
  });
  test("that only scatter are none", () => {
    expect(only(monthly(0, [1, -1, 0.8, -1.2, 1.1, -0.7, 0.9, -0.9]))?.words).toEqual([]);
  });
  test("that move surely but by half a degree are none worth a word", () => {
    expect(only(monthly(0.5, QUIET))?.words).toEqual([]);
  });
  test("five of them draw no line", () => {
    expect(only(monthly(5, QUIET.slice(0, 5)))?.temperature).toMatchObject({ checks: 5, change: null });
  });
  test("the interval of the slope is Student's", () => {
    const days = [0, 1, 2, 3, 4, 5];
    const values = [0, 1, 2, 3, 4, 6];
    const found = only(
      days.map((day, index) => ({
        instrumentId: "a",
        on: `2026-03-0${day + 1}`,
        temperatureF: values[index] ?? 0,
        humidityPct: null,
      })),
    );
    // Sxx 17.5, Sxy 20: slope 8/7; Syy 23.3333, so misses 23.3333 − 20²/17.5 = 0.47619.
    const slope = 20 / 17.5;
    const half = 2.776 * Math.sqrt(0.47619 / 4 / 17.5);
    expect(found?.temperature?.change?.over).toBeCloseTo(5 * slope, 6);
    expect(found?.temperature?.change?.high).toBeCloseTo(5 * (slope + half), 4);
  });
});

test("an instrument that holds most odd startups is named, one with a single odd one is not", () => {
  const use = [
    { instrumentId: "a", startups: 10, odd: 8 },
    { instrumentId: "b", startups: 40, odd: 1 },
  ];
  const [a, b] = instrumentReport([instrument("a"), instrument("b")], use, [], TODAY);
  expect(a?.words.join()).toContain("8 of 10 startups");
  expect(b?.words).toEqual([]);
});

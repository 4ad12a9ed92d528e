import { expect, test } from "vitest";
import { dayOverlay } from "@/lib/engineering/logs";
import { madeLog } from "./made-log";

const DAY_MS = 86_400_000;
const START = Date.UTC(2024, 6, 1);
const SOURCE = "arithmetic written beside each number (computed)";
const span = (days: number) => ({ fromMs: START, toMs: START + days * DAY_MS - 1 });

/** Eleven days of 5-minute rows: day n reads 40 + n all day, and 10 more from 12:00 to 12:30. */
function elevenDays() {
  const rh = Array.from({ length: 11 * 288 }, (_, row) => {
    const [day, step] = [Math.floor(row / 288), Math.floor((row % 288) / 6)];
    return 40 + day + (step === 24 ? 10 : 0);
  });
  return madeLog({ indoorRhPct: rh, indoorF: rh.map(() => 75) });
}

test("median and band by clock hour", () => {
  const found = dayOverlay(elevenDays(), 0, "indoorRhPct", span(11));
  expect(found.days).toHaveLength(11);
  expect(found.median).toHaveLength(48);
  // 40, 41 … 50: the middle one is 45; a tenth of the way along ten steps is the second, nine tenths the tenth.
  expect([found.low[0], found.median[0], found.high[0]], SOURCE).toEqual([41, 45, 49]);
  expect([found.low[24], found.median[24], found.high[24]], SOURCE).toEqual([51, 55, 59]);
  expect(found.days[3]?.values[10], SOURCE).toBe(43);
});

test("only the chosen span counts, and a time without readings is a gap", () => {
  const found = dayOverlay(elevenDays(), 0, "indoorRhPct", {
    fromMs: START + DAY_MS,
    toMs: START + DAY_MS + 3_600_000,
  });
  expect(found.days.map(({ localDay }) => localDay)).toEqual([START / DAY_MS + 1]);
  expect(found.median.slice(0, 4)).toEqual([41, 41, 41, null]);
  expect(dayOverlay(elevenDays(), 0, "indoorRhPct", { fromMs: 0, toMs: 1 }).days).toEqual([]);
});

test("the hour that comes twice counts into its clock hour, and the days stay days of the clock", () => {
  // 3 November 2024 in Chicago: 01:00 to 02:00 comes at UTC−5 and again at UTC−6.
  const first = Date.UTC(2024, 10, 3, 5);
  const timeMs = Float64Array.from({ length: 25 }, (_, hour) => first + hour * 3_600_000);
  const utcOffsetMin = Int16Array.from({ length: 25 }, (_, hour) => (hour < 2 ? -300 : -360));
  const rh = Array.from({ length: 25 }, (_, hour) => (hour === 1 ? 50 : hour === 2 ? 60 : 45));
  const log = madeLog({ indoorRhPct: rh }, { timeMs, utcOffsetMin, intervalMin: 60 });
  const found = dayOverlay(log, 0, "indoorRhPct", { fromMs: first, toMs: first + 25 * 3_600_000 });
  expect(found.days).toHaveLength(1);
  expect(found.days[0]?.values[2], "mean of 50 and 60, computed").toBe(55);
  expect(found.days[0]?.values[46]).toBe(45);
});

test("dew points are laid upon each other too; a log without the column has none", () => {
  const dew = dayOverlay(elevenDays(), 0, "indoorDewPointF", span(1));
  // 75 °F and 40 %: 49.0 °F by psychrolib called bare (ASHRAE Fundamentals 2017 ch. 1, published).
  expect(dew.median[0]).toBeCloseTo(49.0, 0);
  expect(dayOverlay(madeLog({ indoorRhPct: [50, 50] }), 0, "indoorF", span(1)).days).toEqual([]);
});

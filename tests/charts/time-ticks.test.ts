import { describe, expect, test } from "vitest";
import { clockText, timeTicks } from "@/lib/charts/time-ticks";

const CHICAGO = "America/Chicago";

describe("ticks on the house's clock", () => {
  test("a day in summer has a tick every three hours from local midnight", () => {
    // 3 July 2026 00:00 in Chicago is 05:00 UTC (daylight time, UTC−5).
    const from = Date.UTC(2026, 6, 3, 5);
    const ticks = timeTicks(from, from + 24 * 3_600_000, CHICAGO, 8);
    expect(ticks.map((tick) => tick.text)).toEqual([
      "3 Jul",
      "03:00",
      "06:00",
      "09:00",
      "12:00",
      "15:00",
      "18:00",
      "21:00",
      "4 Jul",
    ]);
    expect(ticks[1]?.atMs).toBe(Date.UTC(2026, 6, 3, 8));
  });

  test("the day the clock goes back has 25 hours and its noon at noon", () => {
    // 1 November 2026: midnight is 05:00 UTC (UTC−5), noon is 18:00 UTC (UTC−6).
    const from = Date.UTC(2026, 10, 1, 5);
    const ticks = timeTicks(from, from + 25 * 3_600_000, CHICAGO, 5);
    expect(ticks.map((tick) => tick.text)).toEqual(["1 Nov", "06:00", "12:00", "18:00", "2 Nov"]);
    expect(ticks[2]?.atMs).toBe(Date.UTC(2026, 10, 1, 18));
  });

  test("a year counts in months", () => {
    const ticks = timeTicks(Date.UTC(2026, 0, 1), Date.UTC(2026, 11, 31), "UTC", 12);
    expect(ticks.map((tick) => tick.text)).toEqual([
      "Jan",
      "Feb",
      "Mar",
      "Apr",
      "May",
      "Jun",
      "Jul",
      "Aug",
      "Sep",
      "Oct",
      "Nov",
      "Dec",
    ]);
  });

  test("an unknown time zone is refused, not taken for another", () => {
    expect(() => clockText(0, "Nowhere/Town")).toThrow(RangeError);
  });
});

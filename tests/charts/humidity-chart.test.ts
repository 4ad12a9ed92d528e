import { describe, expect, test } from "vitest";
import { humidityChart } from "@/lib/charts/humidity-chart";
import type { HumidityReading } from "@/lib/charts/humidity-input";
import { above } from "@/lib/charts/humidity-words";

const FIVE_MINUTES = 300_000;
const START = Date.UTC(2026, 6, 3, 5);

function chart(humidities: readonly (number | null)[], dewPointF: number | null = null) {
  const readings: readonly HumidityReading[] = humidities.map((relativeHumidityPercent, index) => ({
    atMs: START + index * FIVE_MINUTES,
    relativeHumidityPercent,
    dewPointF,
  }));
  return humidityChart({
    readings,
    band: { lowPercent: 50, highPercent: 60 },
    gapAfterMinutes: 12,
    timeZone: "America/Chicago",
    width: 600,
  });
}

const linesOf = (geometry: ReturnType<typeof chart>) =>
  geometry?.paths.filter((path) => path.key.startsWith("humidity-")) ?? [];

describe("the humidity chart", () => {
  test("a gap gives two separate paths, and no path has two beginnings", () => {
    const lines = linesOf(chart([52, 53, null, null, 55, 54]));
    expect(lines).toHaveLength(2);
    for (const line of lines) expect(line.d.match(/M/g)).toHaveLength(1);
  });

  test("a pause in the log is a gap even when nothing says null", () => {
    const at = (minute: number, relativeHumidityPercent: number) => ({
      atMs: START + minute * 60_000,
      relativeHumidityPercent,
    });
    const geometry = humidityChart({
      readings: [at(0, 52), at(5, 53), at(60, 54), at(65, 55)],
      band: { lowPercent: 50, highPercent: 60 },
      gapAfterMinutes: 12,
      timeZone: "UTC",
      width: 600,
    });
    expect(linesOf(geometry)).toHaveLength(2);
    expect(geometry?.textAlternative).toContain("1 gap.");
  });

  test("the axis holds the readings and the band, and every tick lies in the picture", () => {
    const geometry = chart([71, 42, 55]);
    const texts = geometry?.ticks.filter((tick) => tick.axis === "y").map((tick) => Number(tick.text)) ?? [];
    expect(Math.min(...texts)).toBeLessThanOrEqual(42);
    expect(Math.max(...texts)).toBeGreaterThanOrEqual(71);
    for (const tick of geometry?.ticks ?? []) {
      expect(tick.at).toBeGreaterThanOrEqual(0);
      expect(tick.at).toBeLessThanOrEqual(tick.axis === "x" ? 600 : (geometry?.height ?? 0));
    }
  });

  test("the sentence counts what is above the limit; the limit itself is not", () => {
    expect(chart([60, 60.1, 61, 59])?.textAlternative).toContain("of which 2 above the limit of 60 %");
  });

  test("what is above the limit is shaded, what is below is not", () => {
    const areas = (values: readonly number[]) =>
      chart(values)?.paths.filter((path) => path.key.startsWith("over-")).length;
    expect(areas([55, 58, 59])).toBe(0);
    expect(areas([55, 62, 59])).toBe(1);
  });

  test("the shade's corners lie on the exact crossings", () => {
    // From 58 at x = 0 to 62 at x = 10 the limit of 60 is crossed at x = 5; back to 56 at x = 13 it is crossed at 11.
    const d = above(
      [
        [0, 58],
        [10, 62],
        [13, 56],
      ],
      60,
      (x) => x,
      (y) => y,
    );
    expect(d).toBe("M5.0,60.0L10.0,62.0L11.0,60.0Z");
  });

  test("a long log is listed by day of the house's clock, with its extremes", () => {
    const geometry = chart(Array.from({ length: 300 }, (_, index) => (index === 288 ? 70 : 55)));
    // 288 readings of five minutes are the first 24 hours; the rest falls on 4 July.
    expect(geometry?.tableRows).toEqual([
      ["3 Jul 2026", "288", "55.0", "55.0", "no reading"],
      ["4 Jul 2026", "12", "55.0", "70.0", "no reading"],
    ]);
  });

  test("the dew point gets its own panel below, only when there is one", () => {
    const without = chart([52, 53]);
    const withDew = chart([52, 53], 58);
    expect(withDew?.height).toBeGreaterThan(without?.height ?? 0);
    expect(without?.paths.some((path) => path.key.startsWith("dew-point"))).toBe(false);
  });

  test("nothing to draw is null, not an empty picture", () => {
    expect(chart([])).toBeNull();
    expect(chart([null, null])).toBeNull();
  });
});

import { expect, test } from "vitest";
import { spanOfDays } from "@/lib/charts/clock-days";
import { dayOverlayChart } from "@/lib/charts/day-overlay-chart";

const day = (localDay: number, value: number) => ({
  localDay,
  values: Array.from({ length: 48 }, () => value),
});
const flat = (value: number) => Array.from({ length: 48 }, () => value);
const base = { width: 600, name: "Indoor humidity", unit: "%", stepMin: 30, limit: 55, chosen: null };

test("each day is a thin line, one picked out is a line of its own with its column in the table", () => {
  const days = [day(19_905, 50), day(19_906, 54), day(19_907, 60)];
  const chart = dayOverlayChart({
    ...base,
    low: flat(50.8),
    median: flat(54),
    high: flat(58.8),
    days,
    chosen: 19_906,
  });
  // 2024-07-02 is 19,906 days after 1 January 1970 (54 years with 14 leap days: 54 × 365 + 14 + 182 = 19,906; computed).
  expect(chart?.tableHead.at(-1)).toBe("Tue, Jul 2, 2024");
  expect(chart?.tableRows[0]).toEqual(["0:00", "54.0", "50.8", "58.8", "54.0"]);
  expect(chart?.paths.filter(({ key }) => key.startsWith("chosen"))).toHaveLength(1);
  expect(chart?.paths.find(({ key }) => key === "days")?.d.match(/M/g)).toHaveLength(2);
  expect(chart?.textAlternative).toContain("of 3 days");
});

test("of many days only the band is drawn, and nothing read is no chart", () => {
  const days = Array.from({ length: 63 }, (_, index) => day(19_000 + index, 50 + (index % 9)));
  const chart = dayOverlayChart({ ...base, low: flat(51), median: flat(54), high: flat(57), days });
  expect(chart?.paths.some(({ key }) => key === "days")).toBe(false);
  const none = Array.from({ length: 48 }, () => null);
  expect(dayOverlayChart({ ...base, low: none, median: none, high: none, days: [] })).toBeNull();
});

test("a span of days is whole days of the house's clock", () => {
  // Chicago's 3 November 2024 has 25 hours, from UTC 05:00 to 06:00 of the next day.
  expect(spanOfDays("2024-11-03", "2024-11-03", "America/Chicago")).toEqual({
    fromMs: Date.UTC(2024, 10, 3, 5),
    toMs: Date.UTC(2024, 10, 4, 6) - 1,
  });
  expect(spanOfDays("2024-11-04", "2024-11-03", "America/Chicago")).toBeNull();
  expect(spanOfDays("", "2024-11-03", "America/Chicago")).toBeNull();
});

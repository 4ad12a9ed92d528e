import { expect, test } from "vitest";
import { daysInWords, type LivedDay } from "@/lib/domain/lived-days";

const day = (rh: number): LivedDay => ({
  day: "2026-07-01",
  indoorRhPct: Float64Array.of(rh),
  indoorDbF: null,
  outdoorDbF: null,
  outdoorRhPct: null,
});

test("a day is told by its means; what is not logged says so", () => {
  const logged = { ...day(62), outdoorDbF: Float64Array.of(80), outdoorRhPct: Float64Array.of(90) };
  expect(daysInWords([logged, { ...day(58), day: "2026-07-02" }])).toBe(
    "2026-07-01: outdoors 80 °F and 90 %, indoors 62 % on average; 2026-07-02: outdoors not logged, indoors 58 % on average",
  );
  expect(daysInWords([])).toBeNull();
});

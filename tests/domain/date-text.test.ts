import { expect, test } from "vitest";
import { dayText, momentText } from "@/lib/domain/date-text";

test("a day stays the same day whatever zone the machine is in", () => {
  expect(dayText("2026-07-31")).toBe("Jul 31, 2026");
  expect(dayText("2026-01-01")).toBe("Jan 1, 2026");
});

test("a moment is written on the company's clock, on both sides of a clock change", () => {
  expect(momentText("2026-11-01T05:30:00.000Z", "America/Chicago")).toBe("Nov 1, 2026, 12:30 AM");
  expect(momentText("2026-11-01T07:30:00.000Z", "America/Chicago")).toBe("Nov 1, 2026, 1:30 AM");
  expect(momentText("2026-07-31T03:03:00.000Z", "America/New_York")).toBe("Jul 30, 2026, 11:03 PM");
});

import { expect, test } from "vitest";
import type { LogSummary } from "@/lib/domain/evaluate";
import { humidityReviewFindings, withoutCause } from "@/lib/domain/evaluate/review";
import { aJobContext, DESIGNED } from "./a-job-context";

const SOURCE =
  "company limit of 95 % of the logged hours (common practice, no source); shares worked out by hand";

const log: LogSummary = {
  importId: "x",
  sourceName: "x",
  firstAt: "2026-08-01T00:00:00.000Z",
  lastAt: "2026-08-09T08:00:00.000Z",
  loggedHours: 200,
  limitPct: 55,
  dryHours: 190,
  hoursAboveLimit: 10,
  share50To60Pct: 40,
  meanRhPct: 51,
  meanDewPointF: 55.2,
  longestWetSpellHours: 4,
  cyclesPerHour: null,
  medianRunMin: null,
  secondStageSharePct: null,
  outdoorFrom: "log",
  analysis: null,
  askedWith: null,
};

test(`the promise is kept at its share exactly and broken just below: ${SOURCE}`, () => {
  const verdictAt = (dryHours: number) =>
    humidityReviewFindings(aJobContext(DESIGNED, { log: { ...log, dryHours } }))[0]?.verdict;
  // 190 of 200 hours are 95 %.
  expect([verdictAt(190), verdictAt(189.9)]).toEqual(["meets", "falls short"]);
});

test("a broken promise says how long and what to look at, with a caution about mould", () => {
  const [said] = humidityReviewFindings(
    aJobContext(DESIGNED, { log: { ...log, dryHours: 100, hoursAboveLimit: 100 } }),
  );
  expect(said?.statement).toContain("100 of 200 logged hours (50.0 %) at or below 55 %");
  expect(said?.nextStep).not.toBeNull();
  expect(said?.caution).toMatch(/mould/i);
});

test("without a log or a limit nothing is claimed", () => {
  expect(humidityReviewFindings(aJobContext(DESIGNED))[0]).toMatchObject({
    verdict: "not measured",
    inputs: ["logImportId"],
  });
  const { load_summary: _, ...noLimit } = DESIGNED;
  expect(humidityReviewFindings(aJobContext(noLimit, { log }))[0]?.verdict).toBe("not measured");
});

test("36 hours tell nothing of a promise for years, dry or wet, and name no cause", () => {
  // The company's least is 168 h, seven days.
  const verdictOf = (dryHours: number, loggedHours: number) =>
    humidityReviewFindings(aJobContext(DESIGNED, { log: { ...log, loggedHours, dryHours } }))[0];
  expect(verdictOf(36, 36)).toMatchObject({ verdict: "can't tell", caution: null });
  expect(verdictOf(0, 36)).toMatchObject({ verdict: "can't tell", caution: null });
  expect(verdictOf(36, 36)?.nextStep).toContain("run for longer");
  expect(verdictOf(168, 168)?.verdict).toBe("meets");
  expect(verdictOf(0, 168)?.verdict).toBe("falls short");
  const short = aJobContext(DESIGNED, { log: { ...log, loggedHours: 36 } });
  expect(withoutCause(short)).toBe(
    "The log is too short to name a cause: it has 36 h of humidity, 168 h are needed.",
  );
  expect(withoutCause(aJobContext(DESIGNED, { log }))).toBe("The log shows no sign of a known cause.");
});

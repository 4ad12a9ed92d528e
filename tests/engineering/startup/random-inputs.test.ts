import fc from "fast-check";
import { expect } from "vitest";
import { airflowLimits } from "@/lib/engineering/airflow";
import { seedLimits } from "@/lib/engineering/limit-definition";
import { REFRIGERANTS, refrigerantLimits } from "@/lib/engineering/refrigerant";
import type { Reading, Readings, StartupSite, StartupStage } from "@/lib/engineering/startup";
import * as startup from "@/lib/engineering/startup";
import { everyFunctionTried, lawful, randomTest, runs, tried } from "../../support/random-inputs";
import { GOOD_STAGE, READINGS_OF_A_GOOD_STAGE } from "./example-stage";

const {
  accuracyToStandardUncertainty,
  condensateComparison,
  decidingReading,
  deliveredCapacity,
  expectedAtConditions,
  READING_NAMES,
  READINGS,
  sanityQuestions,
  startupFindings,
  startupLimits,
  withUncertainty,
} = tried(startup);

const LIMITS = {
  ...seedLimits(startupLimits),
  ...seedLimits(airflowLimits),
  ...seedLimits(refrigerantLimits),
};
const WILD = [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, -1, 0, 1e-300, 1e300];

/** Mostly near a plausible value; one time in `1/wildShare` anything. */
function mixed(near: number, spread: number, wildness = 1): fc.Arbitrary<number> {
  return fc.oneof(
    { weight: 60, arbitrary: fc.double({ min: near - spread, max: near + spread, noNaN: true }) },
    { weight: wildness, arbitrary: fc.constantFrom(...WILD) },
    { weight: wildness, arbitrary: fc.double() },
  );
}
const maybe = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: null, freq: 12 });

function reading(name: keyof Readings, wildness: number): fc.Arbitrary<Reading | null> {
  const good = GOOD_STAGE.readings[name]?.value ?? 50;
  const { unit } = READINGS[name];
  const instrument = fc.record({
    instrumentId: fc.constantFrom("one", "two", "three"),
    accuracy: mixed(0.5, 0.5, wildness),
    accuracyKind: fc.constantFrom("rectangular" as const, "standard" as const),
    unit: fc.oneof(
      { weight: 40, arbitrary: fc.constantFrom(unit, unit, "% of reading") },
      { weight: wildness, arbitrary: fc.constant("°C") },
    ),
    calibrationDue: fc.constantFrom("2026-01-01", "2027-01-01", null),
  });
  return maybe(
    fc.record({ value: mixed(good, Math.abs(good) * 0.3, wildness), instrument: maybe(instrument) }),
  );
}
const readings = (wildness: number): fc.Arbitrary<Readings> =>
  fc.record(
    Object.fromEntries(READING_NAMES.map((name) => [name, reading(name, wildness)])),
  ) as unknown as fc.Arbitrary<Readings>;

const expectedValues = (wildness: number) =>
  fc.record({
    totalBtuh: maybe(mixed(34_000, 10_000, wildness)),
    sensibleBtuh: maybe(mixed(26_000, 8_000, wildness)),
    moistureLbPerH: maybe(mixed(5, 5, wildness)),
  });

const stage = (wildness: number): fc.Arbitrary<StartupStage> =>
  fc.record({
    stage: fc.constant("First stage"),
    mode: fc.constantFrom("cooling" as const, "heating" as const),
    steadyMinutes: maybe(mixed(20, 15, wildness)),
    readings: readings(wildness),
    condensateMinutes: maybe(mixed(30, 25, wildness)),
    expected: expectedValues(wildness),
    makerSuperheatF: maybe(mixed(10, 8, wildness)),
    makerSubcoolingF: maybe(mixed(10, 8, wildness)),
    designCfm: maybe(mixed(1_200, 300, wildness)),
    designStaticInWc: maybe(mixed(0.5, 0.3, wildness)),
    maximumStaticInWc: maybe(mixed(0.8, 0.3, wildness)),
    nameplateVolts: maybe(mixed(230, 20, wildness)),
    ratedAmps: maybe(mixed(14, 5, wildness)),
  });
const site: fc.Arbitrary<StartupSite> = fc.record({
  elevationFt: maybe(mixed(2_000, 2_500, 1)),
  refrigerant: maybe(fc.constantFrom(...REFRIGERANTS)),
  meteringDevice: maybe(fc.constantFrom("fixed orifice" as const, "expansion valve" as const)),
  measuredOn: maybe(fc.constantFrom("2026-11-25", "2027-06-01")),
});

/** Runs it, and shows that the inputs were not so wild that hardly any was answered. */
function check<T>(arbitrary: fc.Arbitrary<T>, call: (input: T) => unknown, share = 1, soakShare = 1): void {
  let answered = 0;
  const settings = runs(30, share, soakShare);
  fc.assert(
    fc.property(arbitrary, (input) => {
      if (lawful(() => call(input)) !== null) answered += 1;
    }),
    settings,
  );
  expect(answered).toBeGreaterThan(settings.numRuns / 20);
}

randomTest("generic uncertainty", () => {
  const anyInput = fc.record({
    value: mixed(10, 9, 3),
    standardUncertainty: mixed(0.5, 0.5, 3),
    instrumentId: fc.constantFrom("one", "two", null),
    systematicShare: mixed(0.5, 0.5, 3),
  });
  const correlation = fc.record({
    between: fc.constantFrom(["a", "b"] as const, ["b", "c"] as const, ["a", "a"] as const),
    coefficient: mixed(0, 1, 3),
  });
  check(
    fc.tuple(
      fc.record({ a: anyInput, b: anyInput, c: anyInput }),
      fc.array(correlation, { maxLength: 2 }),
      maybe(mixed(1, 1, 1)),
      maybe(mixed(5, 3, 1)),
    ),
    ([inputs, correlations, min, max]) => {
      const result = withUncertainty(
        ({ a, b, c }: Readonly<Record<"a" | "b" | "c", number>>) => (a * b) / c,
        inputs,
        { correlations },
      );
      return [result, decidingReading(result, { min, max })];
    },
    1,
    3,
  );
  check(mixed(1, 1, 20), (accuracy) => accuracyToStandardUncertainty(accuracy, "rectangular"));
});

randomTest("delivered capacity", () => {
  check(
    fc.tuple(readings(1), mixed(2_000, 2_500, 2), mixed(0.5, 0.5, 2)),
    ([taken, elevationFt, systematicShare]) =>
      deliveredCapacity({ elevationFt, readings: taken, systematicShare }),
    1 / 4,
  );
});

randomTest("comparison with the expected and with the water caught", () => {
  const delivered = deliveredCapacity({
    elevationFt: 0,
    readings: READINGS_OF_A_GOOD_STAGE,
    systematicShare: 0.5,
  });
  check(
    fc.tuple(expectedValues(1), reading("condensateLb", 1), mixed(30, 20, 2)),
    ([expected, condensateLb, minutes]) => {
      const comparison = lawful(() => expectedAtConditions(delivered, expected));
      if (comparison?.totalShare) expect(comparison.totalShare.value).toBeGreaterThan(0);
      return condensateComparison({
        condensateLb: condensateLb ?? { value: 1, instrument: null },
        minutes,
        moistureLbPerH: delivered.moistureLbPerH,
      });
    },
    1 / 4,
  );
});

randomTest("findings and questions", () => {
  // Nearly every stage holds some 60 numbers, so each may be wild only rarely for whole answers to occur.
  const at = (wildness: number) => fc.record({ one: stage(wildness), two: stage(wildness), site });
  const input = fc.oneof({ weight: 2, arbitrary: at(0) }, { weight: 1, arbitrary: at(1) });
  let answered = 0;
  let asked = 0;
  const settings = runs(31, 1 / 16);
  // One input for both, because to make it takes longer than to judge it.
  fc.assert(
    fc.property(input, ({ one, two, site: place }) => {
      if (lawful(() => startupFindings({ ...place, stages: [one, two] }, LIMITS)) !== null) answered += 1;
      if (lawful(() => sanityQuestions({ stage: two, previous: one, site: place }, LIMITS)) !== null)
        asked += 1;
    }),
    settings,
  );
  expect(answered).toBeGreaterThan(settings.numRuns / 20);
  expect(asked).toBeGreaterThan(settings.numRuns / 20);
});

everyFunctionTried("startup", startup);

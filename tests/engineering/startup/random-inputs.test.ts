import fc from "fast-check";
import { expect, test } from "vitest";
import { airflowLimits } from "@/lib/engineering/airflow";
import { isEngineeringError } from "@/lib/engineering/errors";
import { seedLimits } from "@/lib/engineering/limit-definition";
import { REFRIGERANTS, refrigerantLimits } from "@/lib/engineering/refrigerant";
import {
  accuracyToStandardUncertainty,
  condensateComparison,
  decidingReading,
  deliveredCapacity,
  expectedAtConditions,
  READING_NAMES,
  READINGS,
  type Reading,
  type Readings,
  type StartupSite,
  type StartupStage,
  sanityQuestions,
  startupFindings,
  startupLimits,
  withUncertainty,
} from "@/lib/engineering/startup";
import { GOOD_STAGE } from "./example-stage";

const RUNS = Number(process.env.DEWLEDGER_RANDOM_RUNS ?? 2000);
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

const stage = (wildness: number): fc.Arbitrary<StartupStage> =>
  fc.record({
    stage: fc.constant("First stage"),
    mode: fc.constantFrom("cooling" as const, "heating" as const),
    steadyMinutes: maybe(mixed(20, 15, wildness)),
    readings: readings(wildness),
    condensateMinutes: maybe(mixed(30, 25, wildness)),
    expected: fc.record({
      totalBtuh: maybe(mixed(34_000, 10_000, wildness)),
      sensibleBtuh: maybe(mixed(26_000, 8_000, wildness)),
      moistureLbPerH: maybe(mixed(5, 5, wildness)),
    }),
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

/** True when answered with finite numbers, false when refused by one of our own errors; anything else throws. */
function lawAbiding(call: () => unknown): boolean {
  let result: unknown;
  try {
    result = call();
  } catch (error) {
    if (isEngineeringError(error)) return false;
    throw error;
  }
  requireFinite(result);
  return true;
}
function requireFinite(value: unknown): void {
  if (typeof value === "number" && !Number.isFinite(value)) throw new Error(`not a finite number: ${value}`);
  if (typeof value === "string" && /NaN|Infinity|undefined/.test(value))
    throw new Error(`not a sentence: ${value}`);
  if (typeof value === "object" && value !== null) Object.values(value).forEach(requireFinite);
}
/** Runs it, and shows that the inputs were not so wild that hardly any was answered. */
function check<T>(arbitrary: fc.Arbitrary<T>, call: (input: T) => unknown, runs: number): void {
  let answered = 0;
  fc.assert(
    fc.property(arbitrary, (input) => {
      if (lawAbiding(() => call(input))) answered += 1;
    }),
    { seed: 30, numRuns: runs },
  );
  expect(answered).toBeGreaterThan(runs / 20);
}

test("generic uncertainty", () => {
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
    RUNS,
  );
  check(mixed(1, 1, 20), (accuracy) => accuracyToStandardUncertainty(accuracy, "rectangular"), RUNS);
});

test("delivered capacity, comparison, condensate", () => {
  check(
    fc.tuple(stage(1), mixed(2_000, 2_500, 2), mixed(0.5, 0.5, 2), mixed(30, 20, 2)),
    ([{ readings: taken, expected }, elevationFt, systematicShare, minutes]) => {
      const delivered = deliveredCapacity({ elevationFt, readings: taken, systematicShare });
      const water =
        taken.condensateLb === null
          ? null
          : condensateComparison({
              condensateLb: taken.condensateLb,
              minutes,
              moistureLbPerH: delivered.moistureLbPerH,
            });
      return [delivered, expectedAtConditions(delivered, expected), water];
    },
    RUNS / 4,
  );
});

test("findings and questions", () => {
  // Nearly every stage holds some 60 numbers, so each may be wild only rarely for whole answers to occur.
  const input = fc
    .tuple(fc.constantFrom(0, 0, 1), site)
    .chain(([wildness, at]) =>
      fc.record({ one: stage(wildness), two: stage(wildness), site: fc.constant(at) }),
    );
  check(input, ({ one, two, site: at }) => startupFindings({ ...at, stages: [one, two] }, LIMITS), RUNS / 16);
  check(
    input,
    ({ one, two, site: at }) => sanityQuestions({ stage: two, previous: one, site: at }, LIMITS),
    RUNS / 16,
  );
});

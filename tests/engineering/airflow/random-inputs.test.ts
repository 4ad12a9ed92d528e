import fc from "fast-check";
import { expect } from "vitest";
import type { FanPoint, Measured } from "@/lib/engineering/airflow";
import * as airflow from "@/lib/engineering/airflow";
import { VERDICTS } from "@/lib/engineering/findings";
import { seedLimits } from "@/lib/engineering/limit-definition";
import {
  everyFunctionTried,
  lawful,
  RANDOM_RUNS as RUNS,
  randomTest,
  runs,
  tried,
} from "../../support/random-inputs";

const {
  airflowAgainstDesign,
  airflowAgainstElectricHeatMinimum,
  airflowAgainstMakersMinimum,
  airflowPerTon,
  coilAboveFrost,
  fanOperatingPoint,
  fanPowerPerAirflow,
  nextStepFor,
  numberText,
  roundedDown,
  staticAgainstDesign,
  staticAgainstMaximum,
  verdictOnMeasured,
  airflowFindings,
  airflowFromStaticTable,
  airflowLimits,
  cfmPerTon,
  designAirflowCfm,
  ductCoefficient,
  fanEfficacy,
  fanOperatingPoints,
  filterLoading,
  frictionRate,
  staticBudget,
  supplyDifferenceF,
  flowPlateAirflowCfm,
  flowPlateCorrection,
  temperatureRiseAirflowCfm,
} = tried(airflow);

const LIMITS = seedLimits(airflowLimits);

/** Mostly plausible, sometimes wild. */
function mixed(min: number, max: number): fc.Arbitrary<number> {
  return fc.oneof(
    { weight: 6, arbitrary: fc.double({ min, max, noNaN: true }) },
    { weight: 1, arbitrary: fc.constantFrom(0, -0, min, max) },
    { weight: 1, arbitrary: fc.double() },
    { weight: 1, arbitrary: fc.constantFrom(Number.NaN, Number.POSITIVE_INFINITY, -1, 1e-300, 1e300) },
  );
}
const maybe = (value: fc.Arbitrary<number>) => fc.option(value, { nil: null, freq: 5 });
const measured = (min: number, max: number): fc.Arbitrary<Measured | null> =>
  fc.option(fc.record({ value: mixed(min, max), uncertainty: maybe(mixed(0, (max - min) / 20)) }), {
    nil: null,
    freq: 5,
  });

const check = <T>(arbitrary: fc.Arbitrary<T>, call: (input: T) => unknown): void =>
  fc.assert(
    fc.property(arbitrary, (input) => {
      lawful(() => call(input));
    }),
    runs(20),
  );

randomTest("single quantities", () => {
  check(mixed(0, 1), supplyDifferenceF);
  check(fc.tuple(mixed(5_000, 60_000), mixed(5, 35), mixed(0.6, 1)), (args) => designAirflowCfm(...args));
  check(fc.tuple(mixed(0, 1), mixed(50, 500)), (args) => frictionRate(...args));
  check(fc.tuple(mixed(300, 2_000), mixed(9_000, 60_000)), (args) => cfmPerTon(...args));
  check(
    fc.record({
      fanPowerW: mixed(50, 900),
      airflowCfm: mixed(300, 2_000),
      gradeOneMax: mixed(0.3, 0.5),
      gradeTwoMax: mixed(0.5, 0.7),
    }),
    fanEfficacy,
  );
  check(
    fc.record({
      heat: fc.oneof(
        fc.record({ kilowatts: mixed(3, 20) }),
        fc.record({ volts: mixed(200, 250), amps: mixed(10, 80) }),
      ),
      temperatureRiseF: mixed(10, 60),
      densityRatio: mixed(0.7, 1),
    }),
    temperatureRiseAirflowCfm,
  );
});

randomTest("a flow plate's correction", () => {
  const readings = {
    plateCfm: mixed(300, 2_000),
    supplyStaticInWc: mixed(0.05, 1),
    supplyStaticWithPlateInWc: mixed(0.05, 1),
  };
  check(fc.record(readings), flowPlateAirflowCfm);
  check(
    fc.record({
      stage: fc.constant("Full capacity"),
      fieldPrefix: fc.constant(""),
      plateCfm: maybe(readings.plateCfm),
      supplyStaticInWc: maybe(readings.supplyStaticInWc),
      supplyStaticWithPlateInWc: maybe(readings.supplyStaticWithPlateInWc),
      airflowCfm: maybe(mixed(300, 2_000)),
    }),
    flowPlateCorrection,
  );
});

randomTest("fan tables and ducts", () => {
  const table: fc.Arbitrary<readonly FanPoint[]> = fc.array(
    fc.record({
      setting: fc.constantFrom("A", "B"),
      externalStaticInWc: mixed(0, 1.2),
      airflowCfm: mixed(300, 2_000),
      powerW: maybe(mixed(50, 900)),
    }),
    { maxLength: 10 },
  );
  const point = fc.record({ airflowCfm: mixed(300, 2_000), externalStaticInWc: mixed(0.05, 1) });
  check(point, ductCoefficient);
  check(fc.tuple(table, mixed(1e-7, 2e-6)), ([fan, coefficient]) => {
    lawful(() => fanOperatingPoints({ table: fan, ductCoefficient: coefficient }));
    return fanOperatingPoint({ table: fan, setting: "A", ductCoefficient: coefficient });
  });
  check(fc.tuple(table, mixed(0, 1.2)), ([fan, externalStaticInWc]) =>
    airflowFromStaticTable({ table: fan, setting: "A", externalStaticInWc }),
  );
  check(
    fc.record({
      table,
      setting: fc.constantFrom("A", "B", ""),
      ductCoefficient: mixed(1e-7, 2e-6),
      filter: fc.record({
        cleanInWc: mixed(0, 0.3),
        loadedInWc: mixed(0.1, 0.6),
        atAirflowCfm: mixed(300, 2_000),
      }),
    }),
    filterLoading,
  );
  const drop = maybe(mixed(0, 0.5));
  check(
    fc.record({
      components: fc.record({
        supplyInWc: drop,
        returnInWc: drop,
        filterInWc: drop,
        coilInWc: drop,
        otherInWc: drop,
      }),
      fanExternalStaticInWc: drop,
      maximumInWc: drop,
    }),
    staticBudget,
  );
});

randomTest("findings", () => {
  const stage = fc.record({
    stage: fc.constant("First stage"),
    airflow: measured(300, 2_000),
    designCfm: maybe(mixed(300, 2_000)),
    capacityAsSetBtuh: maybe(mixed(9_000, 60_000)),
    leavingDewPointF: maybe(mixed(40, 65)),
    coilTemperature: measured(25, 60),
    makersMinimumCfm: maybe(mixed(300, 1_000)),
    externalStatic: measured(0.1, 1.2),
    designStaticInWc: maybe(mixed(0.1, 1)),
    maximumStaticInWc: maybe(mixed(0.1, 1)),
    fanPower: measured(50, 900),
  });
  const input = fc.record({
    stages: fc.array(stage, { maxLength: 2 }),
    ducts: fc.option(
      fc.record({
        availableInWc: maybe(mixed(-0.2, 0.5)),
        totalEffectiveLengthFt: maybe(mixed(50, 500)),
      }),
      { nil: null },
    ),
    electricHeat: fc.option(
      fc.record({
        airflow: measured(300, 2_000),
        electricHeatMinimumCfm: maybe(mixed(300, 1_200)),
      }),
      { nil: null },
    ),
  });
  let answered = 0;
  check(input, (values) => {
    const findings = airflowFindings(values, LIMITS);
    answered += 1;
    return findings;
  });
  // The generator must not be so wild that nothing is ever answered.
  expect(answered).toBeGreaterThan(RUNS / 50);
});

randomTest("single checks", () => {
  const one = fc.record({
    stage: fc.constant("First stage"),
    fieldPrefix: fc.constant("stages.0."),
    airflow: measured(300, 2_000),
    designCfm: maybe(mixed(300, 2_000)),
    capacityAsSetBtuh: maybe(mixed(9_000, 60_000)),
    leavingDewPointF: maybe(mixed(40, 65)),
    coilTemperature: measured(25, 60),
    makersMinimumCfm: maybe(mixed(300, 1_000)),
    electricHeatMinimumCfm: maybe(mixed(300, 1_000)),
    externalStatic: measured(0.1, 1.2),
    designStaticInWc: maybe(mixed(0.1, 1)),
    maximumStaticInWc: maybe(mixed(0.1, 1)),
    fanPower: measured(50, 900),
  });
  check(one, (given) => {
    for (const judge of [
      airflowAgainstDesign,
      airflowAgainstElectricHeatMinimum,
      airflowAgainstMakersMinimum,
      airflowPerTon,
      coilAboveFrost,
      fanPowerPerAirflow,
      staticAgainstDesign,
      staticAgainstMaximum,
    ]) {
      lawful(() => judge(given, LIMITS));
    }
  });
});

randomTest("verdicts and words", () => {
  const range = fc.record({ min: maybe(mixed(0, 1)), max: maybe(mixed(0, 1)) });
  const reading = fc.record({ value: mixed(0, 1), uncertainty: maybe(mixed(0, 0.2)) });
  check(fc.tuple(reading, range, mixed(0, 20)), (given) => {
    expect(VERDICTS).toContain(lawful(() => verdictOnMeasured(...given)) ?? "meets");
  });
  check(fc.constantFrom(...VERDICTS), (verdict) =>
    nextStepFor(verdict, { fallsShort: "mend", cantTell: "read again" }),
  );
  const finite = fc.double({ noNaN: true, noDefaultInfinity: true });
  check(fc.tuple(finite, fc.integer({ min: 0, max: 6 })), ([value, decimals]) => {
    const rounded = roundedDown(value);
    if (rounded !== null) expect(rounded.value).toBeLessThanOrEqual(value * (1 + 1e-12));
    return numberText(value, decimals);
  });
});

everyFunctionTried("airflow", airflow);

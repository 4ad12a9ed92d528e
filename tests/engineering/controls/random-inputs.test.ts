import fc from "fast-check";
import { expect } from "vitest";
import type { ControlFindingsInput, ControlSettings, HouseAfternoon } from "@/lib/engineering/controls";
import * as controls from "@/lib/engineering/controls";
import {
  everyFunctionTried,
  lawful,
  RANDOM_RUNS as RUNS,
  randomTest,
  runs,
  tried,
} from "../../support/random-inputs";
import { input } from "./example-input";

const { controlFindings, FAN_BETWEEN_CALLS, thermostatTimeline } = tried(controls);

/** Plausible nine times of ten, else anything a caller may get wrong. */
const number = (min: number, max: number) =>
  fc.oneof(
    { weight: 60, arbitrary: fc.double({ min, max, noNaN: true }) },
    { weight: 1, arbitrary: fc.constantFrom(Number.NaN, Infinity, -Infinity, -1, 0, 1e12, -1e300) },
  );

const settings: fc.Arbitrary<ControlSettings> = fc.record({
  firstStageStartOffsetF: number(0, 3),
  secondStageStartOffsetF: number(0, 5),
  minimumCompressorRunMin: number(0, 20),
  minimumCompressorRestMin: number(0, 20),
  stepBackToFirstStage: fc.boolean(),
  fanRunOnAfterCoolingS: number(0, 300),
  coolingPastSetpointF: number(0, 3),
  indoorTemperatureCorrectionF: number(-3, 3),
  indoorHumidityCorrectionPct: number(-10, 10),
  fanBetweenCalls: fc.constantFrom(...FAN_BETWEEN_CALLS),
  fanBetweenCallsMinPerH: fc.option(number(1, 59), { nil: null, freq: 2 }),
});

const stage = fc.record({ sensibleBtuh: number(5_000, 60_000), latentBtuh: number(0, 20_000) });

const house: fc.Arbitrary<HouseAfternoon> = fc.record({
  setpointF: number(65, 80),
  loadIndoorF: number(70, 78),
  designOutdoorF: number(85, 110),
  designSensibleBtuh: number(10_000, 60_000),
  partLoadOutdoorF: number(70, 84),
  partLoadSensibleBtuh: number(0, 10_000),
  capacitanceBtuPerF: number(500, 30_000),
  stages: fc.oneof(
    { weight: 3, arbitrary: fc.array(stage, { minLength: 1, maxLength: 1 }) },
    { weight: 1, arbitrary: fc.array(stage, { maxLength: 3 }) },
  ),
  outdoor: fc.oneof(
    fc.record({ kind: fc.constant("steady" as const), outdoorF: number(60, 110) }),
    fc.record({
      kind: fc.constant("sinusoid" as const),
      meanF: number(60, 100),
      amplitudeF: number(0, 20),
      peakMinute: number(0, 600),
    }),
    fc.record({
      kind: fc.constant("series" as const),
      stepMin: number(1, 60),
      valuesF: fc.array(number(60, 110), { maxLength: 10 }),
    }),
  ),
  durationMin: fc.oneof({ weight: 9, arbitrary: fc.integer({ min: 1, max: 120 }) }, number(1, 120)),
});

const readings = fc.option(fc.record({ trusted: number(40, 80), thermostatUncorrected: number(40, 80) }), {
  nil: null,
});
const stageCount = fc.constantFrom(null, 1 as const, 2 as const);
const asked: fc.Arbitrary<ControlFindingsInput> = fc.record({
  settings: settings.chain((whole) =>
    fc.constantFrom(whole, { ...whole, firstStageStartOffsetF: null, fanBetweenCalls: null }),
  ),
  board: fc.record({
    capacitySettingTons: fc.option(number(1, 5), { nil: null }),
    capacityAdjustmentByBoard: fc.constantFrom(null, true, false),
    colderCoilCooling: fc.constantFrom(null, true, false),
    airflowSettingCfmByStage: fc.option(fc.array(number(300, 2_000), { maxLength: 3 }), { nil: null }),
  }),
  selectedCapacityTons: fc.option(number(1, 5), { nil: null }),
  equipmentStages: stageCount,
  coolingStagesWired: stageCount,
  fanStages: stageCount,
  fanStagesWired: stageCount,
  temperatureReadings: readings,
  humidityReadings: readings,
  house: fc.option(house, { nil: null }),
  coil: fc.option(
    fc.record({
      timeConstantS: number(10, 200),
      wetTimeS: number(100, 3_000),
      gamma: number(0, 5),
      knownBy: fc.constant("as assumed"),
    }),
    { nil: null },
  ),
  limits: fc.constant(input.limits),
});

randomTest("thermostatTimeline: finite minutes or a typed refusal", () => {
  let results = 0;
  fc.assert(
    fc.property(house, settings, (one, set) => {
      if (lawful(() => thermostatTimeline({ house: one, settings: set })) !== null) results++;
    }),
    runs(62, 1 / 4),
  );
  expect(results).toBeGreaterThan(RUNS / 100);
});

randomTest("controlFindings: finite findings or a typed refusal", () => {
  let results = 0;
  fc.assert(
    fc.property(asked, (one) => {
      if (lawful(() => controlFindings(one)) !== null) results++;
    }),
    runs(63),
  );
  expect(results).toBeGreaterThan(RUNS / 50);
});

everyFunctionTried("controls", controls);

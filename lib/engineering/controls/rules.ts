import type { Basis, Rule } from "../findings";
import { COMMON_PRACTICE } from "./limits";

const FINDINGS_TEST = "tests/engineering/controls/control-findings.test.ts";
const CONTRADICTIONS_TEST = "tests/engineering/controls/contradictions.test.ts";

const LOGIC: Basis = {
  kind: "physics",
  source: "follows from what the settings mean",
  certainty: "computed",
};
const HEAT_BALANCE: Basis = {
  kind: "physics",
  source: "one heat capacity: C dT/dt = load − sensible capacity; the capacitance is a stated assumption",
  certainty: "computed",
};

const practice = (id: string, title: string, equation: string, limits: readonly string[]): Rule => ({
  id,
  title,
  equation,
  basis: COMMON_PRACTICE,
  limits,
  checkedBy: FINDINGS_TEST,
});
const contradiction = (
  id: string,
  title: string,
  equation: string,
  basis: Basis,
  limits: readonly string[] = [],
): Rule => ({ id, title, equation, basis, limits, checkedBy: CONTRADICTIONS_TEST });

export const controlsRules = {
  firstStageStartOffset: practice(
    "controls.first-stage-start-offset",
    "First-stage start offset",
    "minimum ≤ offset ≤ maximum",
    ["controls.firstStageStartOffsetMinF", "controls.firstStageStartOffsetMaxF"],
  ),
  secondStageStartOffset: practice(
    "controls.second-stage-start-offset",
    "Second-stage start offset",
    "first + further ≤ offset ≤ the larger of usual and first + further",
    ["controls.secondBeyondFirstMinF", "controls.secondStageStartOffsetUsualF"],
  ),
  minimumRun: practice("controls.minimum-compressor-run", "Minimum compressor run", "run ≥ minimum", [
    "controls.minimumCompressorRunMin",
  ]),
  minimumRest: practice("controls.minimum-compressor-rest", "Minimum compressor rest", "rest ≥ minimum", [
    "controls.minimumCompressorRestMin",
  ]),
  stepBack: practice("controls.step-back", "Step back to first stage", "step back = expected", [
    "controls.stepBackExpected",
  ]),
  fanRunOn: practice("controls.fan-run-on", "Fan run-on after cooling", "run-on ≤ maximum", [
    "controls.fanRunOnMaxS",
  ]),
  coolingPastSetpoint: practice(
    "controls.cooling-past-setpoint",
    "Cooling past setpoint",
    "allowance ≤ maximum",
    ["controls.coolingPastSetpointMaxF"],
  ),
  fanBetweenCalls: practice("controls.fan-between-calls", "Fan between calls", "minutes an hour ≤ maximum", [
    "controls.fanBetweenCallsMaxMinPerH",
  ]),
  temperatureCorrection: practice(
    "controls.temperature-correction",
    "Indoor temperature correction",
    "|correction − (trusted reading − thermostat reading without correction)| ≤ tolerance",
    ["controls.temperatureCorrectionToleranceF"],
  ),
  humidityCorrection: practice(
    "controls.humidity-correction",
    "Indoor humidity correction",
    "|correction − (trusted reading − thermostat reading without correction)| ≤ tolerance",
    ["controls.humidityCorrectionTolerancePct"],
  ),
  capacitySetting: practice(
    "controls.capacity-setting",
    "Capacity setting on the board",
    "capacity as set = capacity selected; the board may not adjust it",
    [],
  ),
  consistent: contradiction(
    "controls.consistent",
    "Settings agree with each other",
    "no contradiction found",
    LOGIC,
  ),
  secondBelowFirst: contradiction(
    "controls.second-stage-below-first",
    "Second stage would start before the first",
    "second-stage start offset < first-stage start offset",
    LOGIC,
  ),
  runOvershoots: contradiction(
    "controls.minimum-run-overshoots",
    "The shortest run overshoots the setpoint",
    "room after the minimum run at part load, below the end of the call, > allowed",
    HEAT_BALANCE,
    ["controls.overshootMaxF"],
  ),
  restForcesSecondStage: contradiction(
    "controls.rest-forces-second-stage",
    "The pause alone lifts the room to the second stage",
    "room after the minimum rest at design ≥ second-stage start offset",
    HEAT_BALANCE,
  ),
  stageNotWired: contradiction(
    "controls.second-stage-not-wired",
    "Two-stage equipment wired for one stage",
    "cooling stages wired < stages of the equipment",
    LOGIC,
  ),
  stageWiredToNothing: contradiction(
    "controls.stage-wired-to-nothing",
    "Two stages wired to one-stage equipment",
    "cooling stages wired > stages of the equipment",
    LOGIC,
  ),
  fanNotWired: contradiction(
    "controls.fan-second-stage-not-wired",
    "Two-stage fan wired for one stage",
    "fan stages wired < fan stages",
    LOGIC,
  ),
  fanMinutes: contradiction(
    "controls.fan-minutes",
    "Fan between calls and its minutes disagree",
    "minutes given exactly when the fan is set to minutes per hour",
    LOGIC,
  ),
  fanOverWetCoil: contradiction(
    "controls.fan-over-wet-coil",
    "The fan dries the coil back into the house",
    "run-on 0 while the fan runs between calls over a wet coil",
    LOGIC,
  ),
  coldCoilRunOn: contradiction(
    "controls.cold-coil-run-on",
    "Colder-coil cooling with the fan running on",
    "colder-coil cooling on, and fan running over the coil after the call",
    LOGIC,
  ),
  airflowOrder: contradiction(
    "controls.airflow-order",
    "Second-stage airflow below first-stage airflow",
    "airflow setting of the second stage < first stage",
    LOGIC,
  ),
  airflowCount: contradiction(
    "controls.airflow-count",
    "Airflow settings do not match the stages",
    "number of airflow settings ≠ stages of the equipment",
    LOGIC,
  ),
} as const satisfies Record<string, Rule>;

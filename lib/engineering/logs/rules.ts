import type { Basis, Rule } from "../findings";

const FINDINGS_TEST = "tests/engineering/logs/log-findings.test.ts";
const PRACTICE: Basis = {
  kind: "common practice, no source",
  source: "common practice, no source",
  certainty: "practice",
};

const practice = (id: string, title: string, equation: string, limits: readonly string[]): Rule => ({
  id,
  title,
  equation,
  basis: PRACTICE,
  limits,
  checkedBy: FINDINGS_TEST,
});

export const logsRules = {
  dryHours: practice(
    "logs.dry-hours",
    "Dry-hours",
    "hours at or below the job's limit ÷ hours read ≥ minimum",
    ["logs.dryShareMinPct", "logs.leastHours"],
  ),
  wetSpell: practice(
    "logs.wet-spell",
    "Longest wet spell",
    "longest unbroken time above the limit ≤ maximum",
    ["logs.wetSpellMaxH", "logs.leastHours"],
  ),
  shortRuns: practice(
    "logs.short-runs",
    "Short cooling runs",
    "runs shorter than the limit ÷ all runs ≤ maximum",
    ["logs.shortRunMin", "logs.shortRunShareMaxPct"],
  ),
  cycles: practice(
    "logs.cycles",
    "Cycles an hour at half running",
    "starts an hour at 40 to 60 % running ≤ maximum",
    ["logs.cyclesPerHourMax"],
  ),
  minimumRest: practice("logs.minimum-rest", "Shortest rest between runs", "shortest rest ≥ minimum", [
    "logs.minimumRestMin",
  ]),
  secondStage: practice(
    "logs.second-stage-share",
    "Second stage in cooling time",
    "second-stage hours ÷ cooling hours ≤ maximum",
    ["logs.secondStageShareMaxPct"],
  ),
  fanOnly: practice(
    "logs.fan-without-cooling",
    "Fan without cooling",
    "fan-only hours ÷ hours without cooling ≤ maximum",
    ["logs.fanOnlyShareMaxPct"],
  ),
  stillSensor: practice("logs.still-sensor", "Sensor readings move", "longest time of one reading < limit", [
    "logs.stillSensorH",
  ]),
  sensorPlace: practice(
    "logs.sensor-place",
    "Sensor in the thermostat's room",
    "days 10 °F above the setpoint with the compressor at rest, or at 100 °F and more, < limit",
    ["logs.awayDaysMin"],
  ),
  sensorsApart: practice("logs.sensors-apart", "Two sensors disagree", "|second − first|, mean ≤ maximum", [
    "logs.sensorsApartMaxF",
    "logs.sensorsApartMaxRhPct",
  ]),
  oversize: practice(
    "logs.oversize",
    "Capacity against the measured load",
    "largest sensible capacity ÷ peak-hour load line at design ≤ maximum, over its whole interval",
    ["logs.oversizeRatioMax"],
  ),
  loadSummary: practice(
    "logs.load-summary",
    "Measured load against the load summary",
    "|peak-hour load line at design ÷ load summary's peak − 1| ≤ maximum, over its whole interval",
    ["logs.loadSummaryApartMaxPct"],
  ),
} as const satisfies Record<string, Rule>;

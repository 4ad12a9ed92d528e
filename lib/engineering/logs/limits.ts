import type { Basis } from "../findings";
import type { LimitDefinition } from "../limit-definition";

const PRACTICE: Basis = {
  kind: "common practice, no source",
  source: "common practice, no source",
  certainty: "practice",
};

/** The numbers that call a log good. The humidity limit itself belongs to the job. */
export const logsLimits = {
  "logs.dryShareMinPct": limit("Hours at or below the humidity limit, at least", "%", 95, 50, 100, 0),
  "logs.wetSpellMaxH": limit("Longest time above the humidity limit, at most", "h", 24, 1, 720, 0),
  "logs.shortRunMin": limit("A cooling run is short below", "min", 10, 5, 60, 0),
  "logs.shortRunShareMaxPct": limit("Short runs among all, at most", "%", 20, 0, 100, 0),
  "logs.cyclesPerHourMax": limit("Cycles an hour at half running, at most", "per h", 3, 0.5, 12, 1),
  "logs.minimumRestMin": limit("Shortest rest between runs, at least", "min", 3, 0, 30, 0),
  "logs.secondStageShareMaxPct": limit("Second stage in cooling time, at most", "%", 50, 0, 100, 0),
  "logs.fanOnlyShareMaxPct": limit("Fan without cooling in time without cooling, at most", "%", 5, 0, 100, 0),
  "logs.stillSensorH": limit("A sensor is stuck after reading the same for", "h", 24, 1, 240, 0),
  "logs.awayDaysMin": limit("A sensor hung elsewhere after such days", "days", 3, 1, 60, 0),
  "logs.sensorsApartMaxF": limit("Two indoor sensors apart, at most", "°F", 2, 0.5, 10, 1),
  "logs.sensorsApartMaxRhPct": limit("Two indoor sensors apart, at most", "%", 5, 1, 20, 0),
  "logs.oversizeRatioMax": limit(
    "Capacity over the measured peak load of a design day, at most",
    "ratio",
    1.5,
    1,
    4,
    2,
  ),
  "logs.loadSummaryApartMaxPct": limit(
    "Measured load apart from the load summary, at most",
    "%",
    20,
    5,
    100,
    0,
  ),
  "logs.leastHours": limit("Hours of readings a verdict needs, at least", "h", 168, 24, 2_000, 0),
} as const satisfies Record<string, LimitDefinition>;

function limit(
  title: string,
  unit: string,
  seed: number,
  min: number,
  max: number,
  decimals: number,
): LimitDefinition {
  return { title, unit, seed, min, max, decimals, basis: PRACTICE };
}

import type { Basis } from "../findings";
import type { LimitDefinition } from "../limit-definition";

const PRACTICE: Basis = {
  kind: "common practice, no source",
  source: "common practice, no source",
  certainty: "practice",
};
const VOLTAGE: Basis = {
  kind: "published source",
  source: "NEMA MG 1, running within 10 % of nameplate voltage (from memory, verify against the standard)",
  certainty: "unverified",
};

const share = (title: string, seed: number, min: number, max: number): LimitDefinition => ({
  title,
  unit: "ratio",
  seed,
  min,
  max,
  decimals: 2,
  basis: PRACTICE,
});
const difference = (title: string, seed: number, min: number, max: number): LimitDefinition => ({
  title,
  unit: "°F",
  seed,
  min,
  max,
  decimals: 0,
  basis: PRACTICE,
});
const percentage = (title: string, seed: number, max: number, basis: Basis = PRACTICE): LimitDefinition => ({
  title,
  unit: "%",
  seed,
  min: 0,
  max,
  decimals: 0,
  basis,
});

/** The numbers of a startup that a company may set. Charge and airflow limits live in their own folders. */
export const startupLimits = {
  "startup.totalShareMin": share("Delivered total capacity, lowest share of expected", 0.85, 0.5, 1),
  "startup.sensibleShareMin": share("Delivered sensible capacity, lowest share of expected", 0.85, 0.5, 1),
  "startup.moistureShareMin": share("Moisture removal, lowest share of expected", 0.8, 0.3, 1),
  "startup.shareQuestion": share(
    "Delivered more than this share of expected: ask for the readings again",
    1.2,
    1,
    2,
  ),
  "startup.splitMinF": difference("Cooling, smallest plausible temperature split", 12, 5, 25),
  "startup.splitMaxF": difference("Cooling, largest plausible temperature split", 25, 15, 40),
  "startup.riseMinF": difference("Heating, smallest plausible temperature rise", 12, 3, 40),
  "startup.riseMaxF": difference("Heating, largest plausible temperature rise", 60, 20, 100),
  "startup.voltagePct": percentage("Running voltage within this share of nameplate", 10, 20, VOLTAGE),
  "startup.ratedAmpsPct": percentage("Running current, highest share of rated", 100, 150),
  "startup.carnotShareMin": share(
    "Efficiency over the ideal between the two saturation temperatures, lowest",
    0.2,
    0.05,
    0.5,
  ),
  "startup.carnotShareMax": share(
    "Efficiency over the ideal between the two saturation temperatures, highest",
    0.75,
    0.5,
    1,
  ),
  "startup.condensatePct": percentage("Drain water against the air side, allowed difference", 20, 50),
  "startup.condensateMinutes": {
    title: "Shortest time the drain water is caught",
    unit: "min",
    seed: 20,
    min: 5,
    max: 120,
    decimals: 0,
    basis: PRACTICE,
  },
  "startup.humidityDisagreementPct": percentage(
    "Wet bulb and relative humidity of one air stream may differ by",
    5,
    20,
  ),
  "startup.systematicShare": share(
    "Part of an instrument's uncertainty common to all its readings",
    0.7,
    0,
    1,
  ),
  "startup.unknownAccuracyBand": percentage(
    "Instrument of unknown accuracy: no verdict within this share of a limit",
    10,
    50,
  ),
} as const satisfies Record<string, LimitDefinition>;

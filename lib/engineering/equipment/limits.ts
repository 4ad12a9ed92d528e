import type { Basis } from "../findings";
import type { LimitDefinition } from "../limit-definition";

const manualS: Basis = {
  kind: "published source",
  source: "ANSI/ACCA 3 Manual S-2014, sizing limits (from memory, sure)",
  certainty: "recalled",
};
const warningBand: Basis = {
  kind: "published source",
  source: "ANSI/ACCA 3 Manual S-2014, latent capacity (from memory, verify against the standard)",
  certainty: "unverified",
};

function ratioLimit(title: string, seed: number, basis: Basis = manualS): LimitDefinition {
  return { title, unit: "ratio", seed, min: 0.5, max: 3, decimals: 2, basis };
}

/** Numbers of the equipment folder a company may set. */
export const equipmentLimits = {
  "equipment.totalMinRatio": ratioLimit("Least total cooling capacity over load", 0.9),
  "equipment.totalMaxRatioSingleSpeed": ratioLimit("Most total capacity over load, single speed", 1.15),
  "equipment.totalMaxRatioTwoStage": ratioLimit("Most total capacity over load, two-stage", 1.2),
  "equipment.totalMaxRatioVariableSpeed": ratioLimit("Most total capacity over load, variable speed", 1.3),
  "equipment.sensibleMinRatio": ratioLimit(
    "Least sensible capacity over load, after half the excess latent",
    0.9,
  ),
  "equipment.latentMinRatio": ratioLimit("Least latent capacity over load", 1),
  "equipment.latentWarningMinRatio": ratioLimit(
    "Latent capacity over load below which it is no longer only a warning",
    0.9,
    warningBand,
  ),
  "equipment.coldClimateExcessBtuh": {
    title: "Total capacity above load a cold-climate heat pump may have",
    unit: "Btu/h",
    seed: 15_000,
    min: 0,
    max: 60_000,
    decimals: 0,
    basis: manualS,
  },
  "equipment.coldClimateDegreeDayRatio": {
    title: "Heating degree days (65 °F) over cooling degree days (50 °F) that make a cold climate",
    unit: "ratio",
    seed: 2,
    min: 0,
    max: 100,
    decimals: 1,
    basis: manualS,
  },
  "equipment.coldClimateSensibleRatio": {
    title: "Sensible ratio of the load from which latent load counts as little",
    unit: "ratio",
    seed: 0.95,
    min: 0.5,
    max: 1,
    decimals: 2,
    basis: manualS,
  },
} as const satisfies Record<string, LimitDefinition>;

import { NotConvergedError } from "../errors";
import { type Ratio, ratio, requireRange } from "../units";

/** What the fan does between cooling calls. */
export type FanBetweenCalls =
  | { readonly kind: "continuous" }
  | { readonly kind: "off" }
  /** Runs on after the compressor stops, s. 0 to 3,600. */
  | { readonly kind: "runs on"; readonly runOnS: number };

export type LatentRatioInput = {
  /** Most cycles an hour, which the thermostat makes at half running time (Nmax). 0.1 to 12. */
  readonly maxCyclesPerH: number;
  /** Time constant of capacity at start-up (τ), s. 1 to 600. */
  readonly timeConstantS: number;
  /** Time the wet coil's water would last at the steady latent capacity (t_wet), s. 1 to 10,000. */
  readonly wetTimeS: number;
  /** First evaporation rate over steady latent capacity (γ). 0 to 20. */
  readonly gamma: number;
  /** Share of the time the compressor runs. 0.001 to 1. */
  readonly runFraction: number;
  readonly fan: FanBetweenCalls;
};

export type LatentRatio = {
  /** Latent capacity left after water has dried back off the coil, over steady latent capacity. 0 to 1. */
  readonly latentRatio: Ratio;
  /** `null` when the compressor never stops. */
  readonly onTimeS: number | null;
  readonly offTimeS: number | null;
  /** Time from start to net drying (t0). `null` when nothing evaporates. */
  readonly netDryingAfterS: number | null;
};

const TOLERANCE_S = 1e-9;
const MAX_STEPS = 60;

/**
 * Latent capacity kept at part load when water dries back off the coil between calls (Henderson & Rengarajan 1996).
 *
 * On and off times follow from `N = 4·Nmax·X(1 − X)`. During the off time the evaporation rate falls linearly from γ of
 * the steady latent capacity to nothing after `2·t_wet/γ`; so the water evaporated, in seconds of steady latent capacity, is
 *   a = γ·t_off − γ²·t_off²/(4·t_wet)
 * Latent capacity comes up as `1 − exp(−t/τ)`, and net drying begins when that has made good the evaporated water:
 *   t0 + τ(exp(−t0/τ) − 1) = a
 * Trap: one printed manual has `exp(+t0/τ)` there, which has no sensible solution for the usual numbers.
 * What is left over the whole call, divided by what a call without evaporation removes:
 *   1 − a / (t_on + τ(exp(−t_on/τ) − 1))
 * The publication writes `(t_on − t0)` above that line; both agree as soon as t0 is a few τ, and the balance used here stays at
 * or below 1 for short run-on too.
 *
 * @param input - Ranges at {@link LatentRatioInput}.
 * @returns The ratio, zero when a call never gets to net drying, and the times behind it.
 * @throws {@link OutOfRangeError} outside those ranges.
 * @throws {@link NotConvergedError} when t0 is not found (not expected: the equation is convex and rising).
 * @see Henderson & Rengarajan 1996, as given in the EnergyPlus Engineering Reference (published).
 */
export function latentRatio(input: LatentRatioInput): LatentRatio {
  const cycles = requireRange("maxCyclesPerH", input.maxCyclesPerH, "1/h", 0.1, 12);
  const tau = requireRange("timeConstantS", input.timeConstantS, "s", 1, 600);
  const wet = requireRange("wetTimeS", input.wetTimeS, "s", 1, 10_000);
  const gamma = requireRange("gamma", input.gamma, "ratio", 0, 20);
  const share = requireRange("runFraction", input.runFraction, "ratio", 0.001, 1);
  const runOnS =
    input.fan.kind === "runs on" ? requireRange("runOnS", input.fan.runOnS, "s", 0, 3_600) : null;
  if (share === 1) {
    return { latentRatio: ratio(1), onTimeS: null, offTimeS: null, netDryingAfterS: null };
  }

  const onTimeS = 3_600 / (4 * cycles * (1 - share));
  const offTimeS = 3_600 / (4 * cycles * share);
  const times = { onTimeS, offTimeS };
  const blown = input.fan.kind === "off" ? 0 : Math.min(runOnS ?? offTimeS, offTimeS);
  const evaporating = gamma > 0 ? Math.min(blown, (2 * wet) / gamma) : 0;
  const evaporatedS = gamma * evaporating - (gamma * evaporating) ** 2 / (4 * wet);
  if (evaporatedS <= 0) return { latentRatio: ratio(1), ...times, netDryingAfterS: null };

  const steadyS = onTimeS + tau * Math.expm1(-onTimeS / tau);
  return {
    latentRatio: ratio(Math.max(0, 1 - evaporatedS / steadyS)),
    ...times,
    netDryingAfterS: netDryingAfter(evaporatedS, tau),
  };
}

/**
 * t0 of `t0 + τ(exp(−t0/τ) − 1) = a`. No closed form without Lambert's W; the left side is convex and rising, so Newton's method
 * from the right (t0 = a + τ) descends onto the root without turning.
 */
function netDryingAfter(evaporatedS: number, tau: number): number {
  let t0 = evaporatedS + tau;
  for (let step = 0; step < MAX_STEPS; step += 1) {
    const excess = t0 + tau * Math.expm1(-t0 / tau) - evaporatedS;
    const move = excess / -Math.expm1(-t0 / tau);
    t0 -= move;
    if (Math.abs(move) < TOLERANCE_S * Math.max(1, t0)) return t0;
  }
  throw new NotConvergedError("start of net drying", MAX_STEPS, t0, "s");
}

/**
 * Sensible ratio of a system that loses part of its latent capacity: what is not latent comes out as sensible.
 *
 * @param steadySensibleRatio - Steady sensible ratio. 0 to 1.
 * @param keptLatent - From {@link latentRatio}. 0 to 1.
 * @returns Effective sensible ratio, 0 to 1.
 * @throws {@link OutOfRangeError} outside those ranges.
 * @see EnergyPlus Engineering Reference, effective sensible heat ratio (published).
 */
export function effectiveSensibleRatio(steadySensibleRatio: number, keptLatent: number): Ratio {
  const steady = requireRange("steadySensibleRatio", steadySensibleRatio, "ratio", 0, 1);
  const kept = requireRange("keptLatent", keptLatent, "ratio", 0, 1);
  return ratio(1 - (1 - steady) * kept);
}

/**
 * t_wet and γ at the job's conditions from those at the rated point.
 *
 * The coil holds the same water, so t_wet goes with the inverse of latent capacity; evaporation goes with the wet-bulb
 * depression, so γ goes with the depression over latent capacity.
 *
 * @param input - `ratedWetTimeS` 1 to 10,000 s; `ratedGamma` 0 to 20; latent capacities 1 to 1,000,000 Btu/h; wet-bulb depressions of the
 * entering air 0 to 60 °F, rated above 0.1.
 * @returns `wetTimeS` and `gamma`, to give to {@link latentRatio}, which refuses what is outside its range.
 * @throws {@link OutOfRangeError} outside those ranges.
 * @see Henderson & Rengarajan 1996, as given in the EnergyPlus Engineering Reference (published).
 */
export function wetCoilAtConditions(input: {
  readonly ratedWetTimeS: number;
  readonly ratedGamma: number;
  readonly ratedLatentBtuh: number;
  readonly latentBtuh: number;
  readonly ratedDepressionF: number;
  readonly depressionF: number;
}): { readonly wetTimeS: number; readonly gamma: number } {
  const wet = requireRange("ratedWetTimeS", input.ratedWetTimeS, "s", 1, 10_000);
  const gamma = requireRange("ratedGamma", input.ratedGamma, "ratio", 0, 20);
  const rated = requireRange("ratedLatentBtuh", input.ratedLatentBtuh, "Btu/h", 1, 1e6);
  const now = requireRange("latentBtuh", input.latentBtuh, "Btu/h", 1, 1e6);
  const ratedDepression = requireRange("ratedDepressionF", input.ratedDepressionF, "Δ°F", 0.1, 60);
  const depression = requireRange("depressionF", input.depressionF, "Δ°F", 0, 60);
  return {
    wetTimeS: (wet * rated) / now,
    gamma: (gamma * rated * depression) / (now * ratedDepression),
  };
}

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { effectiveSensibleRatio, latentRatio, wetCoilAtConditions } from "@/lib/engineering/moisture";

const SOURCE =
  "Henderson & Rengarajan 1996 as given in the EnergyPlus Engineering Reference (published); table values (computed)";
const continuous = { kind: "continuous" } as const;

describe(`latentRatio against ${SOURCE}`, () => {
  it.each([
    [0.6, 0.136],
    [0.7, 0.435],
    [0.8, 0.668],
    [0.9, 0.852],
  ])("Nmax 3, τ 45, t_wet 1000, γ 1.5: run fraction %f → %f", (runFraction, expected) => {
    const found = latentRatio({
      maxCyclesPerH: 3,
      timeConstantS: 45,
      wetTimeS: 1_000,
      gamma: 1.5,
      runFraction,
      fan: continuous,
    });
    expect(found.latentRatio).toBeCloseTo(expected, 3); // printed to three digits
  });

  it.each([
    [0.5, 0.417],
    [0.7, 0.751],
    [0.9, 0.937],
  ])("Nmax 3, τ 60, t_wet 720, γ 0.6: run fraction %f → %f", (runFraction, expected) => {
    const found = latentRatio({
      maxCyclesPerH: 3,
      timeConstantS: 60,
      wetTimeS: 720,
      gamma: 0.6,
      runFraction,
      fan: continuous,
    });
    expect(found.latentRatio).toBeCloseTo(expected, 3);
  });

  const AT = { maxCyclesPerH: 3, timeConstantS: 45, wetTimeS: 1_000, gamma: 1.5, runFraction: 0.6 };

  it("on and off times by N = 4·Nmax·X(1 − X): 750 and 500 s at 0.6", () => {
    const found = latentRatio({ ...AT, fan: continuous });
    expect(found.onTimeS).toBeCloseTo(750, 9); // 3600 / (4·3·0.4)
    expect(found.offTimeS).toBeCloseTo(500, 9); // 3600 / (4·3·0.6)
  });

  it("start-up term has exp(−t0/τ): net drying begins at a + τ for t0 of many τ", () => {
    const found = latentRatio({ ...AT, fan: continuous });
    // a = 1.5·500 − 1.5²·500²/4000 = 750 − 140.625 = 609.375; t0 = a + τ(1 − exp(−t0/τ)) ≈ 654.375
    expect(found.netDryingAfterS).toBeCloseTo(654.375, 3);
    // As printed, (t_on − t0) / (t_on + τ(exp(−t_on/τ) − 1)).
    expect(found.latentRatio).toBeCloseTo((750 - 654.375) / (750 - 45), 4);
  });

  it("no degradation with the fan off after the compressor, or when it never stops", () => {
    expect(latentRatio({ ...AT, fan: { kind: "off" } }).latentRatio).toBe(1);
    expect(latentRatio({ ...AT, fan: { kind: "runs on", runOnS: 0 } }).latentRatio).toBe(1);
    expect(latentRatio({ ...AT, runFraction: 1, fan: continuous }).latentRatio).toBe(1);
  });

  it("run-on of the whole off time is the continuous fan; a short one lies between", () => {
    const all = latentRatio({ ...AT, fan: { kind: "runs on", runOnS: 500 } }).latentRatio;
    expect(all).toBeCloseTo(latentRatio({ ...AT, fan: continuous }).latentRatio, 12);
    const short = latentRatio({ ...AT, fan: { kind: "runs on", runOnS: 90 } }).latentRatio;
    // a = 1.5·90 − 1.5²·90²/4000 = 130.44; 1 − 130.44 / 705 = 0.815
    expect(short).toBeCloseTo(0.815, 3);
  });

  it("evaporates no more than the coil holds: t_wet seconds of latent capacity", () => {
    // Off time 3600/(12·0.1) = 3,000 s is past 2·t_wet/γ = 1,333 s, where a = t_wet; on time is 333 s: all lost.
    expect(latentRatio({ ...AT, runFraction: 0.1, fan: continuous }).latentRatio).toBe(0);
    const long = latentRatio({ ...AT, maxCyclesPerH: 0.2, runFraction: 0.5, fan: continuous });
    // On 3600/(0.8·0.5) = 9,000 s: 1 − 1000 / (9000 − 45)
    expect(long.latentRatio).toBeCloseTo(1 - 1_000 / 8_955, 9);
  });

  it("effective sensible ratio: what is not latent comes out as sensible", () => {
    expect(effectiveSensibleRatio(0.75, 0.668)).toBeCloseTo(0.833, 12); // 1 − 0.25·0.668
    expect(effectiveSensibleRatio(0.75, 1)).toBeCloseTo(0.75, 12);
  });

  it("t_wet and γ move with latent capacity and wet-bulb depression", () => {
    const at = wetCoilAtConditions({
      ratedWetTimeS: 1_000,
      ratedGamma: 1.5,
      ratedLatentBtuh: 9_000,
      latentBtuh: 6_000,
      ratedDepressionF: 13,
      depressionF: 12,
    });
    expect(at.wetTimeS).toBeCloseTo(1_500, 9);
    expect(at.gamma).toBeCloseTo((1.5 * 9_000 * 12) / (6_000 * 13), 9);
  });
});

describe("laws", () => {
  const parameters = fc.record({
    maxCyclesPerH: fc.double({ min: 1, max: 6, noNaN: true }),
    timeConstantS: fc.double({ min: 10, max: 120, noNaN: true }),
    wetTimeS: fc.double({ min: 200, max: 2_000, noNaN: true }),
    gamma: fc.double({ min: 0, max: 4, noNaN: true }),
    runFraction: fc.double({ min: 0.05, max: 0.95, noNaN: true }),
  });
  const settings = { seed: 20261125, numRuns: 500 };

  it("lies between 0 and 1, and more running, slower evaporation or a shorter run-on never make it worse", () => {
    fc.assert(
      fc.property(parameters, fc.double({ min: 0, max: 900, noNaN: true }), (given, runOnS) => {
        const at = (
          change: Partial<typeof given>,
          fan: Parameters<typeof latentRatio>[0]["fan"] = continuous,
        ) => latentRatio({ ...given, ...change, fan }).latentRatio;
        const one = at({});
        expect(one).toBeGreaterThanOrEqual(0);
        expect(one).toBeLessThanOrEqual(1);
        expect(at({ runFraction: given.runFraction + 0.04 })).toBeGreaterThanOrEqual(one - 1e-12);
        expect(at({ gamma: given.gamma * 0.9 })).toBeGreaterThanOrEqual(one - 1e-12);
        expect(at({}, { kind: "runs on", runOnS })).toBeGreaterThanOrEqual(one - 1e-12);
      }),
      settings,
    );
  });

  it("t0 solves the start-up balance", () => {
    fc.assert(
      fc.property(parameters, (given) => {
        const { netDryingAfterS: t0, offTimeS } = latentRatio({ ...given, fan: continuous });
        if (t0 === null || offTimeS === null) return;
        const off = Math.min(offTimeS, (2 * given.wetTimeS) / given.gamma);
        const evaporated = given.gamma * off - (given.gamma * off) ** 2 / (4 * given.wetTimeS);
        const madeGood = t0 + given.timeConstantS * (Math.exp(-t0 / given.timeConstantS) - 1);
        expect(Math.abs(madeGood - evaporated)).toBeLessThan(1e-6);
      }),
      settings,
    );
  });
});

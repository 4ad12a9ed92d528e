import { describe, expect, it } from "vitest";
import { coilWaterAfterFan, meanStartShare } from "@/lib/engineering/simulation/coil-store";

const SOURCE =
  "Henderson & Rengarajan 1996 as given in the EnergyPlus Engineering Reference: Nmax 3 /h, τ 45 s, t_wet 1000 s, γ 1.5 [F]; τ 60, t_wet 720, γ 0.6 [C]";

/** Steps of a minute, the last one cut, as many cycles as it takes to repeat. */
function keptShare(tau: number, wetS: number, gamma: number, runFraction: number): number {
  const onS = 3_600 / (4 * 3 * (1 - runFraction));
  const offS = 3_600 / (4 * 3 * runFraction);
  const steps = (total: number) =>
    Array.from({ length: Math.ceil(total / 60) }, (_, index) => Math.min(60, total - index * 60));
  // Steady removal is 1 lb/h, so the full coil holds wetS/3600 lb and evaporates γ lb/h at first.
  const full = wetS / 3_600;
  let store = full;
  let drained = 0;
  let removed = 0;
  for (let cycle = 0; cycle < 50; cycle++) {
    drained = 0;
    removed = 0;
    let t = 0;
    for (const step of steps(onS)) {
      const share = meanStartShare(Math.exp(-t / tau), Math.exp(-(t + step) / tau), step / tau);
      const taken = (share * step) / 3_600;
      removed += taken;
      store += taken;
      drained += Math.max(0, store - full);
      store = Math.min(store, full);
      t += step;
    }
    for (const step of steps(offS)) store = coilWaterAfterFan(store, full, gamma, step / 3_600);
  }
  return drained / removed;
}

describe(`latent ratio from the coil's water: ${SOURCE}`, () => {
  // Three printed decimals, and a call whose first minutes make good what dried off: within 0.003 of the table.
  it.each([
    [45, 1_000, 1.5, 0.6, 0.136],
    [45, 1_000, 1.5, 0.7, 0.435],
    [45, 1_000, 1.5, 0.8, 0.668],
    [45, 1_000, 1.5, 0.9, 0.852],
    [60, 720, 0.6, 0.5, 0.417],
    [60, 720, 0.6, 0.7, 0.751],
    [60, 720, 0.6, 0.9, 0.937],
  ])("τ %d s, t_wet %d s, γ %d, running %d: %d", (tau, wetS, gamma, runFraction, expected) => {
    expect(Math.abs(keptShare(tau, wetS, gamma, runFraction) - expected)).toBeLessThan(0.003);
  });
});

describe("closed forms", () => {
  it("full coil, γ t_off − γ² t_off²/(4 t_wet): γ 1.5, 500 s of 1,000 s: 750 − 140.625 = 609.375 s are gone", () => {
    expect(coilWaterAfterFan(1_000, 1_000, 1.5, 500)).toBeCloseTo(390.625, 9);
  });

  it("one long step and many short ones leave the same; after 2 t_wet/γ nothing is left", () => {
    let left = 1_000;
    for (let step = 0; step < 50; step++) left = coilWaterAfterFan(left, 1_000, 1.5, 10);
    expect(left).toBeCloseTo(390.625, 9);
    expect(coilWaterAfterFan(1_000, 1_000, 1.5, 1_334)).toBe(0);
  });

  it("first minute at τ 60 s: 1 − (1 − 1/e) = 0.3679", () => {
    expect(meanStartShare(1, Math.exp(-1), 1)).toBeCloseTo(0.36788, 5);
  });
});

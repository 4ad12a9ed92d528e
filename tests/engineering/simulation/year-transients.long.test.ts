import { describe, expect, it } from "vitest";
import { type MoistAir, moistAir } from "@/lib/engineering/air";
import { simulateYear, type TableSystem, type YearInput } from "@/lib/engineering/simulation";
import { BASE, HOUSE, SETTINGS, SYSTEM, stageAt, steadyWeather } from "./fixtures";

const SOURCE =
  "Henderson & Rengarajan 1996 as given in the EnergyPlus Engineering Reference [F]: γt − γ²t²/(4 t_wet) dries off in a rest of t, t0 + τ(exp(−t0/τ) − 1) makes it good";

/** What a cycle of these lengths keeps of the steady latent capacity, in seconds of it: computed from the equation alone. */
function keptShare(tau: number, wetS: number, gamma: number, onS: number, offS: number): number {
  const dried = gamma * offS - (gamma * offS) ** 2 / (4 * wetS);
  // t0 by halving: the left side rises.
  let low = 0;
  let high = dried + tau;
  for (let step = 0; step < 60; step++) {
    const t0 = (low + high) / 2;
    if (t0 + tau * (Math.exp(-t0 / tau) - 1) > dried) high = t0;
    else low = t0;
  }
  return (
    (onS - low + tau * (Math.exp(-onS / tau) - Math.exp(-low / tau))) /
    (onS + tau * (Math.exp(-onS / tau) - 1))
  );
}

/** Whatever the air, 36,000 Btu/h of which 27,000 sensible: 9,000/(1,061 + 0.444 · 80) = 8.208 lb/h. */
const STEADY_LB_PER_H = 9_000 / (1_061 + 0.444 * 80);
const four = (value: number) => [value, value, value, value];
const FLAT = {
  outdoorDbF: [65, 115],
  enteringWbF: [55, 75],
  enteringDbF: [70, 90],
  totalBtuh: [...four(36_000), ...four(36_000)],
  sensibleBtuh: [...four(27_000), ...four(27_000)],
};
const every = (value: number) => Array.from({ length: 24 }, () => value);

/** How much water the air would still take up, lb/lb, where the wet bulb is the temperature of saturated air of its enthalpy. */
function deficit(air: MoistAir): number {
  let low = 40;
  let high: number = air.dryBulbF;
  const saturated = (dryBulbF: number) =>
    moistAir({ dryBulbF, relativeHumidityPct: 100, pressurePsia: 14.696 });
  for (let step = 0; step < 50; step++) {
    const middle = (low + high) / 2;
    if (saturated(middle).enthalpyBtuPerLb > air.enthalpyBtuPerLb) high = middle;
    else low = middle;
  }
  return saturated(low).humidityRatio - air.humidityRatio;
}
/** The first rate is stated for 80 °F and 67 °F wet bulb; how much faster other air at 80 °F dries the coil. */
const faster = (relativeHumidityPct: number) =>
  deficit(moistAir({ dryBulbF: 80, relativeHumidityPct, pressurePsia: 14.696 })) /
  deficit(moistAir({ dryBulbF: 80, wetBulbF: 67, pressurePsia: 14.696 }));

const exactOnS = (runFraction: number) => 3_600 / (4 * 3 * (1 - runFraction));
const exactOffS = (runFraction: number) => 3_600 / (4 * 3 * runFraction);
const HOURS = 960;
/**
 * Forty days at 80 °F and half saturated, held there by a house too heavy to move: the thermostat keeps to its shortest run and rest, with the
 * fan always on.
 */
function cycling(tau: number, wetS: number, gamma: number, runFraction: number) {
  // The loop turns in steps of 15 s.
  const onS = 15 * Math.ceil(exactOnS(runFraction) / 15 - 1e-9);
  const offS = 15 * Math.ceil(exactOffS(runFraction) / 15 - 1e-9);
  const { a0LbPerH: _a0, approach: _approach, frostLimitF: _frost, ceiling: _ceiling, ...ofAny } = SYSTEM;
  const system: TableSystem = {
    ...ofAny,
    settlingMin: 0,
    stages: [{ airflowCfm: 1_200, fanW: 0, table: FLAT }],
    startTimeConstantS: tau,
    coilHoldsLb: (STEADY_LB_PER_H * wetS) / 3_600,
    firstEvaporationLbPerH: gamma * STEADY_LB_PER_H,
    noCoolingBelowF: 60,
  };
  const dried = gamma * offS - (gamma * offS) ** 2 / (4 * wetS);
  const cooling = onS + tau * (Math.exp(-onS / tau) - 1);
  const loadBtuh = (27_000 * cooling + 9_000 * dried) / (onS + offS);
  const input: YearInput = {
    ...BASE,
    house: {
      ...HOUSE,
      volumeFt3: 1e6,
      conductanceBtuhPerF: 0,
      airCapacitanceBtuPerF: 1e6,
      massCouplingBtuhPerF: 0,
      radiantShare: 0,
      apertures: [],
      leakageAreaIn2: 0,
      gainsBtuhByHour: every(loadBtuh),
      moistureLbPerHByHour: every((STEADY_LB_PER_H * (cooling - dried)) / (onS + offS)),
      moistureCapacitanceMultiple: 100,
      moistureExchangeH: 0.1,
    },
    system,
    controls: {
      coolingSetpointF: 80,
      heatingSetpointF: 60,
      dryAbovePct: 90,
      settings: {
        ...SETTINGS,
        firstStageStartOffsetF: 0,
        coolingPastSetpointF: 0,
        minimumCompressorRunMin: onS / 60,
        minimumCompressorRestMin: offS / 60,
        fanBetweenCalls: "on",
      },
    },
    ventilation: { kind: "none" },
    weather: steadyWeather(HOURS, 85, 0.0109),
    stepsPerMinute: 4,
  };
  const year = simulateYear(input);
  const meanOnS = (3_600 * year.firstStageHours) / year.starts;
  const meanOffS = (3_600 * (HOURS - year.firstStageHours)) / year.starts;
  // The house starts at half saturation; what little it drifts is in the equation's γ.
  const meanRhPct = year.hourRhPct.reduce((sum, one) => sum + one, 0) / HOURS;
  return {
    airGamma: gamma * faster(meanRhPct),
    onS,
    offS,
    meanOnS,
    meanOffS,
    kept: year.drainedLb / (year.drainedLb + year.reEvaporatedLb),
  };
}

describe(`latent ratio of the whole loop: ${SOURCE}`, () => {
  it.each([
    [45, 1_000, 1.5, 0.6, 0.136],
    [45, 1_000, 1.5, 0.7, 0.435],
    [45, 1_000, 1.5, 0.8, 0.668],
    [45, 1_000, 1.5, 0.9, 0.852],
    [60, 720, 0.6, 0.5, 0.417],
    [60, 720, 0.6, 0.7, 0.751],
    [60, 720, 0.6, 0.9, 0.937],
  ])("τ %d s, t_wet %d s, γ %d, running %d: %d", (tau, wetS, gamma, runFraction, printed) => {
    const found = cycling(tau, wetS, gamma, runFraction);
    // The equation itself gives the printed table, to its three decimals.
    expect(keptShare(tau, wetS, gamma, exactOnS(runFraction), exactOffS(runFraction))).toBeCloseTo(
      printed,
      3,
    );
    // The loop turns in steps of 15 s, so its cycles are a step or two longer: against the equation at the lengths it ran.
    expect(Math.abs(found.meanOnS - found.onS)).toBeLessThan(40);
    expect(Math.abs(found.meanOffS - found.offS)).toBeLessThan(40);
    const expected = keptShare(tau, wetS, found.airGamma, found.meanOnS, found.meanOffS);
    expect(Math.abs(found.kept - expected)).toBeLessThan(0.005);
    expect(Math.abs(found.kept - printed)).toBeLessThan(0.03);
  });
});

describe("the compressor's lag in a year: exp(−ln 50 · t/settling) of a step is left after t (definition of the setting)", () => {
  it.each([8, 15])("after a drop of the stage, settling %d min", (settlingMin) => {
    const system = { ...SYSTEM, settlingMin, stages: [stageAt(600, 50), stageAt(1_000, 100)] };
    const settings = { ...SETTINGS, secondStageStartOffsetF: 1, stepBackToFirstStage: true };
    // A week of July: 181 days from the year's start.
    const year = simulateYear({
      ...BASE,
      system,
      controls: { ...BASE.controls, settings },
      trace: { firstHour: 181 * 24, hours: 168 },
    });
    const stage = Array.from(year.trace?.stage ?? []);
    const capacity = Array.from(year.trace?.capacityBtuh ?? []);
    // Drops after a settled second stage, followed by three quarters of an hour of the first.
    const drops = stage.flatMap((one, minute) => {
      const before = stage.slice(Math.max(0, minute - 20), minute);
      const after = stage.slice(minute, minute + 45);
      const isDrop =
        one === 1 && before.length === 20 && before.every((s) => s === 2) && after.every((s) => s === 1);
      return isDrop && after.length === 45 ? [minute] : [];
    });
    expect(drops.length).toBeGreaterThan(3);
    for (const drop of drops) {
      const from = capacity[drop - 1] ?? Number.NaN;
      // The steady capacity moves with the room's air by little in a quarter of an hour; it is drawn straight between the two ends known.
      const settled = capacity[drop + 34] ?? Number.NaN;
      const later = capacity[drop + 44] ?? Number.NaN;
      for (const minutes of [1, 3, 6, settlingMin]) {
        const steady = settled + ((later - settled) / 10) * (minutes - 35);
        const left = ((capacity[drop + minutes - 1] ?? Number.NaN) - steady) / (from - steady);
        expect(Math.abs(left - Math.exp((-Math.log(50) * minutes) / settlingMin))).toBeLessThan(0.03);
      }
    }
  });
});

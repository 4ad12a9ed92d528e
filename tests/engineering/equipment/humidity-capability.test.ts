import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { moistAir } from "@/lib/engineering/air";
import { humidityCapability } from "@/lib/engineering/equipment";
import { SEA_LEVEL_PSIA, SYSTEM } from "./fixtures";

const SOURCE = "balance of heat and water (physics)";
const INPUT = {
  indoorDbF: 75,
  pressurePsia: SEA_LEVEL_PSIA,
  airflowCfm: 700,
  system: { ...SYSTEM, heldTemperatureF: 42, capacityCeilingBtuh: 24_000 },
  sensibleLoadBtuh: 12_000,
  latentLoadBtuh: 4_000,
};

describe(`humidityCapability, ${SOURCE}`, () => {
  it("both loads are carried exactly at the humidity found", () => {
    const found = humidityCapability(INPUT);
    if (found.outcome !== "holds") throw new Error(found.outcome);
    expect(found.runShare * found.state.sensibleBtuh).toBeCloseTo(12_000, 6);
    expect(Math.abs(found.runShare * found.state.latentBtuh - 4_000)).toBeLessThan(0.01);
    expect(found.relativeHumidityPct).toBeGreaterThan(35);
    expect(found.relativeHumidityPct).toBeLessThan(60);
  });

  it("without latent load the house dries until the coil surface is at the indoor dew point", () => {
    const found = humidityCapability({ ...INPUT, latentLoadBtuh: 0 });
    if (found.outcome !== "holds") throw new Error(found.outcome);
    const indoor = moistAir({
      dryBulbF: 75,
      relativeHumidityPct: found.relativeHumidityPct,
      pressurePsia: SEA_LEVEL_PSIA,
    });
    expect(Math.abs(indoor.dewPointF - found.state.adpF)).toBeLessThan(1e-4);
  });

  it("says which load is not carried", () => {
    expect(humidityCapability({ ...INPUT, sensibleLoadBtuh: 30_000 }).outcome).toBe(
      "sensible load not carried",
    );
    expect(humidityCapability({ ...INPUT, sensibleLoadBtuh: 500, latentLoadBtuh: 9_000 }).outcome).toBe(
      "latent load not carried",
    );
  });

  it("law: more latent load or more airflow → a wetter house", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 500, max: 6_000, noNaN: true }),
        fc.double({ min: 1.02, max: 1.3, noNaN: true }),
        fc.double({ min: 500, max: 900, noNaN: true }),
        (latentLoadBtuh, factor, airflowCfm) => {
          const at = (change: Partial<typeof INPUT>): number => {
            const found = humidityCapability({ ...INPUT, latentLoadBtuh, airflowCfm, ...change });
            if (found.outcome === "latent load not carried") throw new Error(found.outcome);
            return found.relativeHumidityPct;
          };
          const one = at({});
          expect(at({ latentLoadBtuh: latentLoadBtuh * factor })).toBeGreaterThan(one);
          expect(at({ airflowCfm: airflowCfm * factor })).toBeGreaterThan(one);
        },
      ),
      { seed: 20261125, numRuns: 100 },
    );
  });
});

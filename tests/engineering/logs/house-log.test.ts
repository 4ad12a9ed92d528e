import { readFileSync } from "node:fs";
import { parse } from "csv-parse/sync";
import { mean, quantile } from "simple-statistics";
import { describe, expect, it } from "vitest";
import { moistAir } from "@/lib/engineering/air";
import { analyzeLog } from "@/lib/engineering/logs";

const SOURCE =
  "Appliances Energy Prediction data set, UCI, CC BY 4.0 (Candanedo et al., Energy and Buildings 140, 2017) [F]; its station's own dew point is data no one here wrote [C]";

/** By csv-parse and plain arithmetic alone: none of the code under test. */
const rows: Record<string, string>[] = parse(
  readFileSync(new URL("../../fixtures/house-log/measured-house-2016-a.csv", import.meta.url)),
  { columns: true },
);
const column = (heading: string) => rows.map((row) => Number(row[heading]));
const toF = (celsius: number) => celsius * 1.8 + 32;
const startMs = Date.UTC(2016, 1, 13, 23, 0);

const analysis = analyzeLog(
  {
    timeMs: Float64Array.from(rows, (_, index) => startMs + index * 600_000),
    utcOffsetMin: new Int16Array(rows.length).fill(60),
    intervalMin: 10,
    channels: {
      indoorF: Float64Array.from(column("T1"), toF),
      indoorRhPct: Float64Array.from(column("RH_1")),
      outdoorF: Float64Array.from(column("T_out"), toF),
      outdoorRhPct: Float64Array.from(column("RH_out")),
      outdoorDewPointF: Float64Array.from(column("Tdewpoint"), toF),
    },
  },
  { humidityLimitPct: 42, elevationFt: 0, deliveredSensibleBtuhByStage: null, design: null },
);
const { humidity } = analysis;
if (humidity === null) throw new Error("no humidity");

describe(`a measured house: ${SOURCE}`, () => {
  it("period and samples", () => {
    expect(rows).toHaveLength(6_768);
    expect(analysis.period).toMatchObject({
      samples: 6_768,
      intervalMin: 10,
      missingHours: 0,
      fromMs: startMs,
    });
  });

  it("hours at or below the limit, means and quantiles", () => {
    const rh = column("RH_1");
    expect(humidity.hours).toBeCloseTo(1_128, 9);
    expect(humidity.dryHours).toBeCloseTo(rh.filter((value) => value <= 42).length / 6, 9);
    expect(humidity.share50To60).toBeCloseTo(
      rh.filter((value) => value >= 50 && value <= 60).length / 6_768,
      12,
    );
    expect(humidity.meanRhPct).toBeCloseTo(mean(rh), 9);
    expect(humidity.medianRhPct).toBe(quantile(rh, 0.5));
    expect(humidity.highestRhPct).toBe(Math.max(...rh));
  });

  it("longest wet spell", () => {
    const spells = column("RH_1")
      .map((value) => (value > 42 ? "w" : "d"))
      .join("")
      .split("d");
    expect(humidity.longestWetSpell?.hours).toBeCloseTo(
      Math.max(...spells.map(({ length }) => length)) / 6,
      9,
    );
  });

  it("by hour of day", () => {
    expect(humidity.byHourOfDay).toHaveLength(24);
    for (const { hour, hours, meanRhPct } of humidity.byHourOfDay) {
      const mine = rows.filter(({ date = "" }) => Number(date.split(" ")[1]?.split(":")[0]) === hour);
      expect(hours).toBeCloseTo(mine.length / 6, 9);
      expect(meanRhPct).toBeCloseTo(mean(mine.map((row) => Number(row.RH_1))), 9);
    }
  });

  it("the dew point from temperature and humidity meets the station's within 0.1 °F in the mean, frost-free", () => {
    expect(humidity.outdoorDewPointCheckF).not.toBeNull();
    expect(Math.abs(humidity.outdoorDewPointCheckF ?? 99)).toBeLessThanOrEqual(0.1);
  });

  it("with frost a known disagreement: frost points here lie above the station's dew points over water", () => {
    const cold = rows.filter((row) => Number(row.Tdewpoint) < -0.5);
    const differences = cold.map((row) => {
      const air = moistAir({
        dryBulbF: toF(Number(row.T_out)),
        pressurePsia: 14.696,
        relativeHumidityPct: Number(row.RH_out),
      });
      return air.dewPointF - toF(Number(row.Tdewpoint));
    });
    // At −2.5 °C over water the vapour is that of about −2.2 °C over ice (WMO guide, recalled): 0.3 °C, 0.5 °F.
    // The mean over these hours, most of them milder, stays between 0.1 and 0.6 °F.
    expect(mean(differences)).toBeGreaterThan(0.1);
    expect(mean(differences)).toBeLessThan(0.6);
  });

  it("indoor minus outdoor moisture, by the Magnus form (WMO guide, recalled) at 14.696 psia", () => {
    const w = (celsius: number, pct: number) => {
      const vapour = 6.112 * Math.exp((17.62 * celsius) / (243.12 + celsius)) * (pct / 100);
      return (0.621945 * vapour) / (1013.25 - vapour);
    };
    const differences = rows.map(
      (row) => 7_000 * (w(Number(row.T1), Number(row.RH_1)) - w(Number(row.T_out), Number(row.RH_out))),
    );
    // Magnus is within 0.3 % of the handbook's saturation pressure above freezing; below it the handbook takes ice.
    expect(humidity.overOutdoor?.meanGrainsPerLb ?? 0).toBeCloseTo(mean(differences), 0);
    expect(humidity.overOutdoor?.wetterShare ?? 0).toBeCloseTo(
      differences.filter((value) => value > 0).length / differences.length,
      2,
    );
  });

  it("what the log lacks is null, not zero", () => {
    expect(analysis.running).toBeNull();
    expect(analysis.loadLine).toBeNull();
    expect(analysis.sensors.secondMinusFirstF).toBeNull();
  });
});
